/** A swatch in motion: the strip of the moment at the top, and its cloth running up underneath it. */
import { paintRows } from '../cloth/sheet.ts';
import { swatchMilliseconds, swatchPixels, swatchRows } from '../worker/swatch-size.ts';

const columns = Uint16Array.from({ length: swatchPixels }, (_, pixel) => pixel);

/** Rows of cloth that the window shows. */
const rowsInView = 30;
/** Of the height, taken by the strip and the gap below it. */
const stripShare = 0.2;

export interface Swatching {
  readonly levels: Uint8Array;
  /** One dot a cell. */
  readonly sheet: HTMLCanvasElement;
}

export function swatchingOf(levels: Uint8Array): Swatching {
  const sheet = document.createElement('canvas');
  sheet.width = swatchPixels;
  sheet.height = swatchRows;
  const context = sheet.getContext('2d')!;
  const image = context.createImageData(swatchPixels, swatchRows);
  paintRows(image, { levels, rows: swatchRows }, columns, 0, swatchRows);
  context.putImageData(image, 0, 0);
  return { levels, sheet };
}

/** @param now any clock in milliseconds; swatches go round together */
export function drawSwatching(canvas: HTMLCanvasElement, { levels, sheet }: Swatching, now: number): void {
  const context = canvas.getContext('2d')!;
  const { width, height } = canvas;
  const row = ((now % swatchMilliseconds) / swatchMilliseconds) * swatchRows;
  context.fillStyle = '#0e0b08';
  context.fillRect(0, 0, width, height);
  drawStrip(context, levels, Math.floor(row));
  const top = Math.round(height * stripShare);
  context.save();
  context.beginPath();
  context.rect(0, top, width, height - top);
  context.clip();
  context.imageSmoothingEnabled = false;
  const rowHeight = (height - top) / rowsInView;
  const sheetHeight = rowHeight * swatchRows;
  for (let y = top - row * rowHeight; y < height; y += sheetHeight) {
    context.drawImage(sheet, 0, y, width, sheetHeight);
  }
  context.restore();
}

/** Pixel beside pixel, as they shine. */
function drawStrip(context: CanvasRenderingContext2D, levels: Uint8Array, row: number): void {
  const { width, height } = context.canvas;
  const pitch = width / swatchPixels;
  const radius = Math.min(pitch * 0.36, height * stripShare * 0.3);
  for (let pixel = 0; pixel < swatchPixels; pixel++) {
    const at = (row * swatchPixels + pixel) * 3;
    const [red, green, blue] = levels.subarray(at, at + 3);
    context.fillStyle = `rgb(${30 + red! * 0.88} ${26 + green! * 0.9} ${21 + blue! * 0.92})`;
    context.beginPath();
    context.arc((pixel + 0.5) * pitch, height * stripShare * 0.44, radius, 0, 2 * Math.PI);
    context.fill();
  }
}

/** One clock for all swatches: many small canvases, one frame request. */
const drawn = new Set<(now: number) => void>();
let ticking = false;
let lastTick = 0;
/** A cloth that creeps needs no more. */
const frameMilliseconds = 30;

/** Calls back some thirty times a second until the returned function is called. */
export function everyFrame(draw: (now: number) => void): () => void {
  drawn.add(draw);
  if (!ticking) {
    ticking = true;
    requestAnimationFrame(tick);
  }
  return () => drawn.delete(draw);
}

function tick(now: number): void {
  if (drawn.size === 0) {
    ticking = false;
    return;
  }
  if (now - lastTick >= frameMilliseconds) {
    lastTick = now;
    for (const draw of drawn) draw(now);
  }
  requestAnimationFrame(tick);
}
