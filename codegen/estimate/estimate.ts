/**
 * What a sketch takes of an ATmega328P, counted and not measured: RAM to the byte, program memory and
 * cycles as sums of typical figures. A rehearsal measures all three.
 */
import type { ScoredClip, ScoredLook } from '../../engine/look/score.ts';
import { chips } from '../../engine/parts/chips.ts';
import { inOrder } from '../../engine/pattern/ir.ts';
import type { Plan } from '../player/plan.ts';
import { costOf, helperBytes, sumOf } from './operations.ts';
import { sketchRamBytes } from './ram.ts';

export interface Estimate {
  /** Program and tables, with a small sketch core. */
  readonly flashBytes: number;
  /** Exact: all variables of the sketch, without the sketch core and the stack. */
  readonly ramBytes: number;
  /** To draw a pixel in the slowest look at its busiest, sending not included. */
  readonly cyclesPerPixel: number;
  /** What the slowest look comes to, sending included; never more than there are ticks. */
  readonly framesPerSecond: number;
  readonly looks: readonly LookEstimate[];
}

export interface LookEstimate {
  readonly name: string;
  readonly cyclesPerPixel: number;
  readonly framesPerSecond: number;
}

export const cycles = {
  /** One step of a walk through a zone, with a glance at the clock. */
  step: 160,
  /** Laying a pixel on what is there. */
  lay: 100,
  /** Times, fades and the call of a clip. */
  clip: 4500,
  /** Clearing, gamma, brightness, order, a glance at the clock, and summing up the current. */
  output: 430,
  /** The player, of everything else. */
  playerShare: 1.06,
};

export function estimateSketch(plan: Plan): Estimate {
  const looks = plan.score.looks.map((look) => estimateLook(plan, look));
  const slowest = looks.reduce((worst, look) => (look.cyclesPerPixel > worst.cyclesPerPixel ? look : worst));
  return {
    flashBytes: estimateFlash(plan),
    ramBytes: sketchRamBytes(plan.score, plan.features),
    cyclesPerPixel: slowest.cyclesPerPixel,
    framesPerSecond: slowest.framesPerSecond,
    looks,
  };
}

function estimateLook({ score, driver }: Plan, look: ScoredLook): LookEstimate {
  const pixels = score.pixels.length;
  const clockHertz = chips.atmega328p.clockHertz!;
  // On one track one clip plays at a time; the dearest of each is the busiest moment there can be.
  const tracks = new Map<number, number>();
  for (const clip of look.clips) {
    tracks.set(clip.track, Math.max(tracks.get(clip.track) ?? 0, clipCycles(clip)));
  }
  const clips = [...tracks.values()].reduce((sum, each) => sum + each, 0);
  const drawing = (clips + pixels * cycles.output) * cycles.playerShare;
  const wireSeconds = (pixels * score.output.channels * driver.nanosecondsPerByte) / 1e9;
  const frames = 1 / (drawing / clockHertz + wireSeconds);
  return {
    name: look.name,
    cyclesPerPixel: Math.round(drawing / pixels),
    framesPerSecond: Math.round(10 * Math.min(frames, 1000 / score.piece.tickMilliseconds)) / 10,
  };
}

/** Of one frame of a clip at its busiest. */
export function clipCycles({ program, zone }: ScoredClip): number {
  const nodes = inOrder(program.levels);
  const once = sumOf(nodes.filter(({ rate }) => rate !== 'pixel').map(costOf)).cycles;
  const perPixel = sumOf(nodes.filter(({ rate }) => rate === 'pixel').map(costOf)).cycles;
  return cycles.clip + once + zone.entries.length * (perPixel + cycles.step + cycles.lay);
}

/** Of program, by feature; what a piece does not ask for is not there. */
const featureBytes = {
  dissolve: 280,
  moveOn: 80,
  buttons: 190,
  gestures: 290,
  fades: 210,
  endless: 60,
  time: 100,
  turn: 60,
  keyed: 440,
  eased: 130,
  overshoot: 300,
  places: 60,
  balance: 80,
  keepAlive: 70,
  normal: 130,
  multiply: 250,
  screen: 270,
  darken: 220,
  lighten: 220,
  plusLighter: 200,
} as const;

const bytes = {
  /** Clock, looks, frame, output with its table, driver, and a sketch core like that of a rehearsal. */
  everySketch: 2620,
  look: 20,
  /** A clip's plan, and the function around its pattern. */
  clip: 20,
  function: 140,
};

function estimateFlash({ features, score, tables, helpers, functions, clipNames }: Plan): number {
  const clips = score.looks.flatMap((look) => look.clips);
  // Clips that are equal share a function.
  const programs = new Map(clips.map(({ program }, at) => [clipNames.flat()[at], program]));
  const parts = [
    bytes.everySketch,
    ...Object.entries(featureBytes).map(([feature, size]) => (features[feature] ? size : 0)),
    score.looks.length * bytes.look,
    clips.length * bytes.clip,
    functions.length * bytes.function,
    ...[...programs.values()].map(({ levels }) => sumOf(inOrder(levels).map(costOf)).bytes),
    ...helpers.map(helperBytes),
    tables.bytes,
  ];
  return parts.reduce((sum, part) => sum + part, 0);
}
