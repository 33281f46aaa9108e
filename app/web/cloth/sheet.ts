/**
 * Rows of levels as a woven picture: one column a pixel, one row a stretch of time, time running down.
 *
 *   levels   row 0: R G B of pixel 0, R G B of pixel 1, ...    sheet   one thread crossing a cell,
 *            row 1: ...                                                 every second one a little darker
 */

export interface Rows {
  readonly levels: Uint8Array;
  readonly rows: number;
}

/** The thread when no light falls on it, so that a dark stretch is still cloth. */
const unlit = [25, 21, 17] as const;
/** Over and under: what the crossing threads take from the light. */
const underShare = 0.84;

/**
 * Paints rows into an image of `columns` by `rows` pixels.
 * @param columns the pixel that each column shows
 */
export function paintRows(
  image: ImageData,
  { levels, rows }: Rows,
  columns: ArrayLike<number>,
  fromRow: number,
  toRow: number,
): void {
  const rowBytes = levels.length / rows;
  for (let row = fromRow; row < toRow; row++) {
    for (let column = 0; column < columns.length; column++) {
      const from = row * rowBytes + columns[column]! * 3;
      const to = (row * columns.length + column) * 4;
      const share = (row + column) % 2 === 0 ? 1 : underShare;
      for (let channel = 0; channel < 3; channel++) {
        const base = unlit[channel]!;
        image.data[to + channel] = (base + ((255 - base) * levels[from + channel]!) / 255) * share;
      }
      image.data[to + 3] = 255;
    }
  }
}

/** A stretch of time, in milliseconds. */
export interface Stretch {
  readonly fromMs: number;
  readonly toMs: number;
}

/** A cloth kept as a small image, one dot a cell, ready to be stretched on to a canvas. */
export class Sheet {
  private readonly canvas = document.createElement('canvas');
  private readonly context: CanvasRenderingContext2D;
  private readonly image: ImageData;

  constructor(
    private readonly columns: ArrayLike<number>,
    private readonly rows: number,
    private readonly stretch: Stretch,
  ) {
    this.canvas.width = Math.max(1, columns.length);
    this.canvas.height = rows;
    this.context = this.canvas.getContext('2d')!;
    this.image = this.context.createImageData(this.canvas.width, rows);
  }

  /** Takes over some of the cloth's rows; those that never came are left out when it is drawn. */
  take(levels: Uint8Array, fromRow: number, toRow: number): void {
    if (levels.length === 0 || toRow <= fromRow) return;
    paintRows(this.image, { levels, rows: this.rows }, this.columns, fromRow, toRow);
    this.context.putImageData(this.image, 0, 0, 0, fromRow, this.canvas.width, toRow - fromRow);
  }

  /** Stretches the sheet over a canvas that shows some stretch of time. */
  drawOn(context: CanvasRenderingContext2D, shown: Stretch): void {
    const { width, height } = context.canvas;
    const scale = height / (shown.toMs - shown.fromMs);
    const top = (this.stretch.fromMs - shown.fromMs) * scale;
    const tall = (this.stretch.toMs - this.stretch.fromMs) * scale;
    context.imageSmoothingEnabled = false;
    context.drawImage(this.canvas, 0, top, width, tall);
  }

  /** The gaps between the threads of a canvas that shows just this sheet. */
  drawGaps(context: CanvasRenderingContext2D): void {
    drawGaps(context, this.canvas.width, this.rows);
  }
}

/** Below this many dots a thread is too thin for a gap. */
const thinnest = 2.5;

function drawGaps(context: CanvasRenderingContext2D, columns: number, rows: number): void {
  const { width, height } = context.canvas;
  const columnWidth = width / columns;
  const rowHeight = height / rows;
  context.fillStyle = 'rgb(14 11 8 / 0.42)';
  if (rowHeight >= thinnest) {
    for (let row = 1; row <= rows; row++) context.fillRect(0, Math.round(row * rowHeight) - 1, width, 1);
  }
  context.fillStyle = 'rgb(14 11 8 / 0.3)';
  if (columnWidth >= thinnest + 1) {
    for (let column = 1; column < columns; column++) {
      context.fillRect(Math.round(column * columnWidth) - 1, 0, 1, height);
    }
  }
}
