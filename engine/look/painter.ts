/** Draws the looks of one score into buffers that are made once. */
import type { Zone } from '../layout/layout.ts';
import type { DrawProgram } from '../pattern/javascript.ts';
import type { ClipProgram } from '../pattern/program.ts';
import { unitMix } from './blend.ts';
import { clipAmount, clipMsAt, clipSeconds, clipTurn, lookTimeAt } from './clip-time.ts';
import { keyedValue } from './keyframes.ts';
import { lay } from './lay.ts';
import type { Moment } from './moment.ts';
import type { Score, ScoredClip } from './score.ts';

/** A zone as the inner loops want it. The clips of a zone share it, as one is drawn after the other. */
interface PaintedZone {
  readonly offsets: Uint16Array;
  readonly indices: Uint16Array;
  readonly places: Int16Array;
  readonly levels: Uint8Array;
}

interface PaintedClip {
  readonly scored: ScoredClip;
  readonly zone: PaintedZone;
  readonly keyed: Int32Array;
  /** Made when the clip is first seen: a score that is never played runs no generated code. */
  draw: DrawProgram | null;
}

export class Painter {
  private readonly score: Score;
  private readonly compile: (program: ClipProgram) => DrawProgram;
  private readonly looks: readonly (readonly PaintedClip[])[];
  private readonly current: Uint8Array;
  private readonly leaving: Uint8Array;

  constructor(score: Score, compile: (program: ClipProgram) => DrawProgram) {
    this.score = score;
    this.compile = compile;
    const zones = new Map(score.zones.map((zone) => [zone, paintedZone(zone)]));
    this.looks = score.looks.map((look) =>
      look.clips.map((scored) => ({
        scored,
        zone: zones.get(scored.zone)!,
        keyed: new Int32Array(scored.program.keyed.length),
        draw: null,
      })),
    );
    this.current = new Uint8Array(score.pixels.length * 3);
    this.leaving = new Uint8Array(score.pixels.length * 3);
  }

  /** Red, green, blue of each pixel; the same buffer each time. Hidden pixels are in no zone and stay 0. */
  paint(moment: Moment): Uint8Array {
    const { current, leaving } = this;
    if (moment.blackout) return current.fill(0);
    this.paintLook(moment.look, moment.ms, current);
    if (moment.leaving !== null) {
      this.paintLook(moment.leaving.look, moment.leaving.ms, leaving);
      for (let at = 0; at < current.length; at++) {
        current[at] = unitMix(leaving[at]!, current[at]!, moment.leaving.mix);
      }
    }
    return current;
  }

  private paintLook(index: number, ms: number, levels: Uint8Array): void {
    levels.fill(0);
    const look = this.score.looks[index]!;
    const time = lookTimeAt(look, ms, this.score.piece.tickMilliseconds);
    for (const clip of this.looks[index]!) {
      const { scored, zone } = clip;
      const clipMs = clipMsAt(scored, time);
      if (clipMs === null) continue;
      const amount = clipAmount(scored, clipMs);
      if (amount === 0) continue;
      this.paintClip(clip, clipMs, clipTurn(scored, look, time, clipMs));
      lay(scored.blend, levels, zone.offsets, zone.levels, amount);
    }
  }

  private paintClip(clip: PaintedClip, clipMs: number, turn: number): void {
    const { scored, zone, keyed } = clip;
    const { program } = scored;
    for (let slot = 0; slot < keyed.length; slot++) keyed[slot] = keyedValue(program.keyed[slot]!, clipMs);
    clip.draw ??= this.compile(program);
    clip.draw(zone.levels, zone.indices, zone.places, clipSeconds(clipMs), turn, keyed);
  }
}

function paintedZone(zone: Zone): PaintedZone {
  return {
    offsets: Uint16Array.from(zone.entries, (entry) => entry.pixel * 3),
    indices: Uint16Array.from(zone.entries, (entry) => entry.index),
    places: zone.places,
    levels: new Uint8Array(zone.entries.length * 3),
  };
}
