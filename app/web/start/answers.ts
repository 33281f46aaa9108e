/** The first answers of a maker as the page asks for them, and the piece that they give. */
import { type ChipName, chips } from '../../../engine/parts/chips.ts';
import { type PixelPartName, pixelParts } from '../../../engine/parts/pixels.ts';
import { type FirstAnswers, newPiece } from '../../../engine/piece/new-piece.ts';
import type { Piece, Shape } from '../../../engine/piece/schema.ts';
import { type SupplyKind, supplies } from './supplies.ts';

export const lightKinds = ['strip', 'ring', 'grid', 'pixels'] as const;
export type LightKind = (typeof lightKinds)[number];

/** Pixels a metre of the reels that are sold. */
export const densities = [30, 60, 96, 144] as const;

export interface Answers {
  readonly name: string;
  readonly light: LightKind;
  readonly part: PixelPartName;
  /** Of a strip. */
  readonly perMetre: number;
  readonly metres: number;
  /** Of a ring. */
  readonly around: number;
  readonly diameterMillimetres: number;
  /** Of a grid. */
  readonly columns: number;
  readonly rows: number;
  /** Of pixels one by one. */
  readonly loose: number;
  readonly board: ChipName;
  readonly supply: SupplyKind;
  readonly milliamps: number;
}

/** A ring of 24 at a USB port: what most begin with. */
export const usualAnswers: Answers = {
  name: 'My first light',
  light: 'ring',
  part: 'ws2812b',
  perMetre: 60,
  metres: 0.5,
  around: 24,
  diameterMillimetres: 66,
  columns: 8,
  rows: 8,
  loose: 12,
  board: 'atmega328p',
  supply: 'usb',
  milliamps: supplies.usb.milliamps,
};

export function withSupply(answers: Answers, supply: SupplyKind): Answers {
  return { ...answers, supply, milliamps: supplies[supply].milliamps };
}

/** Pixels of the first thing that lights. */
export function pixelCount({ light, perMetre, metres, around, columns, rows, loose }: Answers): number {
  const counts: Record<LightKind, number> = {
    strip: Math.max(1, Math.round(metres * perMetre)),
    ring: around,
    grid: columns * rows,
    pixels: loose,
  };
  return counts[light];
}

/** Pixels sewn on one by one are rarely closer than this. */
const loosePitchMillimetres = 50;
/** Of the usual panels. */
const gridPitchMillimetres = 10;

/** The first run, with its middle in the origin. */
export function firstShape(answers: Answers): Shape {
  const { perMetre, around, diameterMillimetres, columns, rows } = answers;
  const count = pixelCount(answers);
  const pitch = 1000 / perMetre;
  const before = (places: number, step: number) => (-(places - 1) * step) / 2;
  const shapes: Record<LightKind, Shape> = {
    strip: {
      kind: 'straight',
      count,
      start: [before(count, pitch), 0],
      pitchMillimetres: pitch,
      directionDegrees: 0,
    },
    ring: {
      kind: 'ring',
      count: around,
      centre: [0, 0],
      diameterMillimetres,
      firstDegrees: 90,
      clockwise: true,
      flattening: 1,
    },
    grid: {
      kind: 'grid',
      columns,
      rows,
      start: [before(columns, gridPitchMillimetres), -before(rows, gridPitchMillimetres)],
      pitchMillimetres: gridPitchMillimetres,
      directionDegrees: 0,
      order: 'alternating',
    },
    pixels: {
      kind: 'points',
      points: Array.from({ length: count }, (_, i) => [
        before(count, loosePitchMillimetres) + i * loosePitchMillimetres,
        0,
      ]),
    },
  };
  return shapes[answers.light];
}

export function firstAnswers(answers: Answers): FirstAnswers {
  const { name, board, part, light, supply, milliamps } = answers;
  const keepAlive = Math.min(supplies[supply].keepAliveMilliamps, Math.floor(milliamps / 2));
  return {
    name: name.trim(),
    board,
    part,
    limitMilliamps: milliamps,
    keepAliveMilliamps: keepAlive,
    firstRun: { name: light, shape: firstShape(answers) },
  };
}

export function firstPiece(answers: Answers): Piece {
  const piece = newPiece(firstAnswers(answers));
  return { ...piece, supply: { ...piece.supply, volts: supplies[answers.supply].volts } };
}

/** What the whole of it draws if every pixel shines white at full power. */
export function fullMilliamps(answers: Answers): number {
  const { channelTenths, quiescentTenths } = pixelParts[answers.part];
  const pixelTenths = channelTenths.reduce((sum, tenths) => sum + tenths, quiescentTenths);
  return (chips[answers.board].currentTenths + pixelCount(answers) * pixelTenths) / 10;
}
