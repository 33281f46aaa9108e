/**
 * Lengths and view boxes of SVG files, in millimetres. Absolute units as CSS Values and Units 4 (6.2) defines
 * them; the fitting of a view box as SVG 2 (8.2) does.
 */

export const millimetresPerPx = 25.4 / 96;

/** Millimetres of each absolute unit; a number without one counts in px, 96 of them to the inch. */
const millimetresPerUnit: Readonly<Record<string, number>> = {
  '': millimetresPerPx,
  px: millimetresPerPx,
  pt: 25.4 / 72,
  pc: 25.4 / 6,
  in: 25.4,
  cm: 10,
  mm: 1,
  q: 0.25,
};

/** Undefined for what is no length, and for what depends on something around the file, such as `%`. */
export function lengthInMillimetres(text: string | null): number | undefined {
  const [, number, unit] =
    /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?)\s*([a-z]*)\s*$/i.exec(text ?? '') ?? [];
  const factor = unit === undefined ? undefined : millimetresPerUnit[unit.toLowerCase()];
  return factor === undefined ? undefined : Number(number) * factor;
}

export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function viewBoxOf(text: string | null): ViewBox | undefined {
  const numbers = (text ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  const [x, y, width, height] = numbers;
  if (numbers.length !== 4 || !numbers.every(Number.isFinite)) return undefined;
  return width! > 0 && height! > 0 ? { x: x!, y: y!, width: width!, height: height! } : undefined;
}

/** As SVG writes it: x' = a x + c y + e, y' = b x + d y + f. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** What leads from a view box to a box at the origin, by the words of `preserveAspectRatio`. */
export function fitViewBox(box: ViewBox, width: number, height: number, preserve: string | null): Matrix {
  const [align = 'xMidYMid', meetOrSlice] = (preserve ?? '')
    .trim()
    .split(/\s+/)
    .filter((word) => word !== '');
  const across = width / box.width;
  const down = height / box.height;
  if (align === 'none') return [across, 0, 0, down, -box.x * across, -box.y * down];
  const scale = meetOrSlice === 'slice' ? Math.max(across, down) : Math.min(across, down);
  const [, wordX = 'Mid', wordY = 'Mid'] = /^x(Min|Mid|Max)Y(Min|Mid|Max)$/.exec(align) ?? [];
  return [
    scale,
    0,
    0,
    scale,
    -box.x * scale + (width - box.width * scale) * restBefore[wordX]!,
    -box.y * scale + (height - box.height * scale) * restBefore[wordY]!,
  ];
}

/** Which share of the room that is left lies before the drawing. */
const restBefore: Readonly<Record<string, number>> = { Min: 0, Mid: 1 / 2, Max: 1 };

export interface Viewport {
  readonly widthMillimetres: number;
  readonly heightMillimetres: number;
  /** From the user units of the outermost `svg` to millimetres, y still down. */
  readonly matrix: Matrix;
}

/** The size of a file that stands by itself: what is left out follows from the view box, in px. */
export function outerViewport(attribute: (name: string) => string | null): Viewport {
  const box = viewBoxOf(attribute('viewBox'));
  let width = lengthInMillimetres(attribute('width'));
  let height = lengthInMillimetres(attribute('height'));
  if (box === undefined) {
    const matrix: Matrix = [millimetresPerPx, 0, 0, millimetresPerPx, 0, 0];
    return { widthMillimetres: width ?? 0, heightMillimetres: height ?? 0, matrix };
  }
  if (width === undefined && height === undefined) width = box.width * millimetresPerPx;
  width ??= (height! * box.width) / box.height;
  height ??= (width * box.height) / box.width;
  const matrix = fitViewBox(box, width, height, attribute('preserveAspectRatio'));
  return { widthMillimetres: width, heightMillimetres: height, matrix };
}
