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
  /** The sketch's program and tables, without the sketch core. */
  readonly flashBytes: number;
  /** Exact: all variables of the sketch, without the sketch core and the stack. */
  readonly ramBytes: number;
  /** The slowest look at its busiest, sending included. */
  readonly cyclesPerPixel: number;
  readonly framesPerSecond: number;
  readonly looks: readonly LookEstimate[];
}

export interface LookEstimate {
  readonly name: string;
  readonly cyclesPerPixel: number;
  readonly framesPerSecond: number;
}

const cycles = {
  /** One step of a walk through a zone, with a glance at the clock. */
  step: 150,
  /** Laying a pixel on what is there. */
  lay: 95,
  /** Times, fades and the call of a clip. */
  clip: 4500,
  /** Clearing, gamma, brightness, order, a glance at the clock, and summing up the current. */
  output: 330,
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
  const drawing = [...tracks.values()].reduce((sum, each) => sum + each, 0);
  const wireSeconds = (pixels * score.output.channels * driver.nanosecondsPerByte) / 1e9;
  const frame = (drawing + pixels * cycles.output) * cycles.playerShare + wireSeconds * clockHertz;
  return {
    name: look.name,
    cyclesPerPixel: Math.round(frame / pixels),
    framesPerSecond: Math.round((10 * clockHertz) / frame) / 10,
  };
}

function clipCycles({ program, zone }: ScoredClip): number {
  const nodes = inOrder(program.levels);
  const once = sumOf(nodes.filter(({ rate }) => rate !== 'pixel').map(costOf)).cycles;
  const perPixel = sumOf(nodes.filter(({ rate }) => rate === 'pixel').map(costOf)).cycles;
  return cycles.clip + once + zone.entries.length * (perPixel + cycles.step + cycles.lay);
}

const bytes = {
  /** Clock, looks, frame, output and driver: every sketch has them, gamma table and all. */
  everySketch: 3000,
  dissolve: 420,
  moveOn: 90,
  buttons: 330,
  gestures: 260,
  fades: 260,
  endless: 180,
  keyed: 420,
  overshoot: 420,
  places: 60,
  blend: 130,
  keepAlive: 110,
  /** A clip's call, and its function around the pattern. */
  call: 56,
  function: 130,
  look: 20,
};

function estimateFlash(plan: Plan): number {
  const { features, score, tables, helpers, functions } = plan;
  const has = (name: keyof typeof bytes & string) => (features[name] ? bytes[name] : 0);
  const blends = ['normal', 'multiply', 'screen', 'darken', 'lighten', 'plusLighter'];
  const programs = new Map(
    score.looks.flatMap((look, at) => look.clips.map((clip, i) => [plan.clipNames[at]![i]!, clip])),
  );
  const patterns = [...programs.values()].map(
    (clip) => sumOf(inOrder(clip.program.levels).map(costOf)).bytes,
  );
  return (
    bytes.everySketch +
    has('dissolve') +
    has('moveOn') +
    has('buttons') +
    has('gestures') +
    has('fades') +
    has('endless') +
    has('keyed') +
    has('overshoot') +
    has('places') +
    has('keepAlive') +
    blends.filter((blend) => features[blend]).length * bytes.blend +
    score.looks.length * bytes.look +
    score.looks.reduce((sum, look) => sum + look.clips.length, 0) * bytes.call +
    functions.length * bytes.function +
    patterns.reduce((sum, each) => sum + each, 0) +
    helpers.reduce((sum, helper) => sum + helperBytes(helper), 0) +
    tables.bytes
  );
}
