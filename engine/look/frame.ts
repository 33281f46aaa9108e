/** A frame: what the pixels show, and what is sent to them, at one moment. A pure function of its arguments. */
import { levelsToDrive } from '../light/output.ts';
import { compileProgram, type DrawProgram } from '../pattern/javascript.ts';
import type { ClipProgram } from '../pattern/program.ts';
import { milliampsOf } from '../power/current.ts';
import type { Moment } from './moment.ts';
import { Painter } from './painter.ts';
import type { Score } from './score.ts';

export interface Frame {
  /** Red, green, blue of each pixel, in pixel order. */
  readonly levels: Uint8Array;
  /** In wire order, in the part's channel order. */
  readonly drive: Uint8Array;
  readonly milliamps: number;
  /** The limiter dimmed it. */
  readonly limited: boolean;
}

interface Desk {
  readonly painter: Painter;
  readonly drive: Uint8Array;
}

/** Scores of an edited piece share the programs of all clips that are as before. */
const draws = new WeakMap<ClipProgram, DrawProgram>();

function drawOf(program: ClipProgram): DrawProgram {
  let draw = draws.get(program);
  if (draw === undefined) {
    draw = compileProgram(program);
    draws.set(program, draw);
  }
  return draw;
}

/** Buffers of each score, for as long as the score lives. */
const desks = new WeakMap<Score, Desk>();

function deskOf(score: Score): Desk {
  let desk = desks.get(score);
  if (desk === undefined) {
    const drive = new Uint8Array(score.pixels.length * score.output.channels);
    desk = { painter: new Painter(score, drawOf), drive };
    desks.set(score, desk);
  }
  return desk;
}

/** The frame at a moment of the score, in arrays of its own. */
export function frame(score: Score, moment: Moment): Frame {
  const borrowed = borrowFrame(score, moment);
  return { ...borrowed, levels: borrowed.levels.slice(), drive: borrowed.drive.slice() };
}

/** The same without a copy: its arrays are good until the next frame of this score is drawn. */
export function borrowFrame(score: Score, moment: Moment): Frame {
  const { painter, drive } = deskOf(score);
  const levels = painter.paint(moment);
  const { lightCurrent, limited } = levelsToDrive(
    score.output,
    score.current,
    moment.brightness,
    levels,
    drive,
  );
  return { levels, drive, milliamps: milliampsOf(score.current, lightCurrent), limited };
}

/** What the pixels show, without what is sent to them; good until the next frame of this score is drawn. */
export function borrowLevels(score: Score, moment: Moment): Uint8Array {
  return deskOf(score).painter.paint(moment);
}

/** A look at a time since its entry, at a brightness, with nothing else going on: for pictures and reports. */
export function stillMoment(look: number, ms: number, brightness: number): Moment {
  return { look, ms, brightness, blackout: false, paused: false, uptimeMs: ms, leaving: null };
}
