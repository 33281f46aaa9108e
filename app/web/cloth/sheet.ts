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

/** A cloth kept as a small image, one dot a cell, ready to be stretched on to a canvas. */
export class Sheet {
  private readonly canvas = document.createElement('canvas');
  private readonly context: CanvasRenderingContext2D;
  private readonly image: ImageData;

  constructor(
    private readonly columns: ArrayLike<number>,
    private readonly rows: number,
  ) {
    this.canvas.width = Math.max(1, columns.length);
    this.canvas.height = rows;
    this.context = this.canvas.getContext('2d')!;
    this.image = this.context.createImageData(this.canvas.width, rows);
  }

  /** Takes over the cloth's rows; all of them, as old ones may have been woven over. */
  take(levels: Uint8Array, wovenRows: number): void {
    if (levels.length === 0) return;
    const had = this.image.data[3] === 255;
    // Rows that were never woven are left out; those of an older revision are still there.
    paintRows(this.image, { levels, rows: this.rows }, this.columns, 0, had ? this.rows : wovenRows);
    this.context.putImageData(this.image, 0, 0);
  }

  /**
   * Stretches part of the sheet over a canvas and lays the gaps between the threads over it.
   * @param from share of the rows at the top of the canvas, 0..1, and at its bottom
   */
  drawOn(canvas: HTMLCanvasElement, from = 0, to = 1): void {
    const context = canvas.getContext('2d')!;
    const { width, height } = canvas;
    context.imageSmoothingEnabled = false;
    context.clearRect(0, 0, width, height);
    const top = from * this.rows;
    const rows = (to - from) * this.rows;
    context.drawImage(this.canvas, 0, top, this.canvas.width, rows, 0, 0, width, height);
    drawGaps(context, this.canvas.width, rows);
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
