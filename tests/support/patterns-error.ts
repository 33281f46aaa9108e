/** How far the engine is from a reference, in output steps: a 256th of full light. */

import type { Node } from '../../engine/pattern/ir.ts';
import type { ClipProgram } from '../../engine/pattern/program.ts';
import type { Settings } from './patterns.ts';
import { inputsOf, type PixelMoment, valuesOfNodes, type ZoneSetting } from './patterns.ts';
import type { RealMoment, Reference } from './patterns-reference.ts';

/** The same moment in real numbers. */
export function realMoment(moment: PixelMoment, { count, seed }: ZoneSetting): RealMoment {
  return {
    along: moment.index / count,
    placeX: moment.placeX / 16384,
    placeY: moment.placeY / 16384,
    time: moment.time / 65536,
    turn: moment.turn / 16384,
    pixel: moment.index,
    count,
    seed,
  };
}

/** A colour channel on the scale of levels, limited as levels are, but not yet cut down to a whole one. */
export const onLevelScale = (channel: number) => 256 * Math.min(1, Math.max(0, channel));

/** The engine's three channels on the scale of levels, read before the last shift cuts them down. */
export function unfloored(program: ClipProgram, moment: PixelMoment, zone: ZoneSetting): number[] {
  const values = valuesOfNodes(program.levels, inputsOf(moment, zone, { gradients: program.gradients }));
  return program.levels.map((level) => beforeLastShift(level, values));
}

function beforeLastShift(level: Node, values: ReadonlyMap<Node, number>): number {
  const inner = level.op === 'cast' ? level.a : level;
  // Full light is held just below 256 there; without a shift half a level is the best guess.
  return inner.op === 'shr' ? values.get(inner.a)! / 2 ** inner.shift : values.get(level)! + 0.5;
}

/** One step of each input, which the engine itself cannot tell apart, and the bounds inside which it stays. */
const inputs = {
  along: { step: 1 / 65536, min: 0, max: 1 - 1 / 65536 },
  placeX: { step: 1 / 16384, min: -1, max: 1 },
  placeY: { step: 1 / 16384, min: -1, max: 1 },
  time: { step: 1 / 65536, min: 0, max: 32400 },
  turn: { step: 1 / 16384, min: 0, max: 1 - 1 / 16384 },
} as const;

/** A change of the colour by more output steps than this for one input step is a jump. */
const jump = 2;

/**
 * Whether an input step to either side lies a discontinuity: there the engine, whose inputs are whole steps,
 * may rightly stand on the other side of it.
 */
export function isNearJump(reference: Reference, moment: RealMoment, settings: Settings): boolean {
  const here = reference(moment, settings).map(onLevelScale);
  return Object.entries(inputs).some(([input, { step, min, max }]) =>
    [-step, step].some((by) => {
      const there = moment[input as keyof RealMoment] + by;
      const moved = { ...moment, [input]: Math.min(max, Math.max(min, there)) };
      return reference(moved, settings).some(
        (channel, i) => Math.abs(onLevelScale(channel) - here[i]!) > jump,
      );
    }),
  );
}

export interface Deviation {
  readonly median: number;
  /** 99th percentile. */
  readonly high: number;
  readonly worst: number;
  readonly samples: number;
  /** Share of samples that lay at a discontinuity. */
  readonly excluded: number;
}

/** @param steps absolute differences in output steps of what was not excluded */
export function deviationOf(steps: readonly number[], excluded: number): Deviation {
  const sorted = [...steps].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0;
  return {
    median: at(0.5),
    high: at(0.99),
    worst: sorted.at(-1) ?? 0,
    samples: sorted.length,
    excluded: excluded / (excluded + sorted.length),
  };
}
