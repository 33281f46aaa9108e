/** The wires that a maker cuts: from the chip to the first run, from run to run, and across cut-out pixels. */
import type { Piece, Run } from '../piece/schema.ts';
import type { Point } from './layout.ts';
import { pixelPlaces } from './shapes.ts';

export interface Length {
  /** From centre to centre of the pixels, on the flat place. */
  readonly straightMillimetres: number;
  /** What to cut off the reel: `cutLength`. */
  readonly cutMillimetres: number;
}

/** From the last pixel of one run to the first of the next. */
export interface Lead {
  readonly line: number;
  /** Null for the wire from the chip, whose place nobody has told: its length is null too. */
  readonly from: string | null;
  readonly to: string;
  readonly length: Length | null;
}

/** Where pixels were cut out of a run, between two that are left. */
export interface Gap {
  readonly run: string;
  /** Of the last pixel before the gap, and of the first one behind it. */
  readonly afterPosition: number;
  readonly beforePosition: number;
  readonly length: Length;
}

export interface Leads {
  readonly leads: readonly Lead[];
  readonly gaps: readonly Gap[];
}

/** Cloth bends and stretches, so that a wire takes a tenth more than the straight way. Common practice, no source. */
const slackShare = 0.1;
/** At each of the two joints, to strip the end and to let it bend before it pulls. Common practice, no source. */
const jointMillimetres = 15;

/** The straight way, a tenth more, and 15 mm for each of the two joints; up to whole millimetres. */
export function cutLength(straightMillimetres: number): number {
  // A length that rounding puts a millionth above a whole millimetre is that millimetre.
  return Math.ceil(straightMillimetres * (1 + slackShare) + 2 * jointMillimetres - 1e-6);
}

/** All wires of the data, in the order in which it runs. A run without any pixel left is passed by. */
export function leadsOf(piece: Piece): Leads {
  const leads: Lead[] = [];
  const gaps: Gap[] = [];
  for (const [line, { runs }] of piece.lines.entries()) {
    let before: { readonly name: string; readonly end: Point } | undefined;
    for (const run of runs) {
      const left = pixelsLeft(run);
      const [first, last] = [left[0], left.at(-1)];
      if (first === undefined || last === undefined) continue;
      const length = before === undefined ? null : lengthBetween(before.end, first.place);
      leads.push({ line, from: before?.name ?? null, to: run.name, length });
      gaps.push(...gapsOf(run.name, left));
      before = { name: run.name, end: last.place };
    }
  }
  return { leads, gaps };
}

interface PixelLeft {
  readonly position: number;
  readonly place: Point;
}

/** All that were not cut out; hidden ones are wired like others. */
function pixelsLeft({ flat, removed }: Run): PixelLeft[] {
  const cutOut = new Set(removed);
  return pixelPlaces(flat)
    .map((place, position) => ({ position, place }))
    .filter(({ position }) => !cutOut.has(position));
}

function gapsOf(run: string, left: readonly PixelLeft[]): Gap[] {
  return left.slice(1).flatMap(({ position, place }, i) => {
    const before = left[i]!;
    if (position === before.position + 1) return [];
    const length = lengthBetween(before.place, place);
    return [{ run, afterPosition: before.position, beforePosition: position, length }];
  });
}

function lengthBetween(a: Point, b: Point): Length {
  const straightMillimetres = Math.hypot(b.x - a.x, b.y - a.y);
  return { straightMillimetres, cutMillimetres: cutLength(straightMillimetres) };
}
