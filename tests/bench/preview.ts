/** The preview's side: the compiled JavaScript of a program, timed in this process. */
import { compileProgram, type DrawProgram } from '../../engine/pattern/javascript.ts';
import { type Case, framesOf, moments } from './cases.ts';

export interface Measured {
  readonly nanosecondsPerPixel: number;
  /** The last frame in hexadecimal digits: both sides must have drawn the same. */
  readonly lastFrame: string;
}

export class PreviewBench {
  private readonly draws = new Map<Case, DrawProgram>();

  measure(one: Case): Measured {
    const draw = this.drawOf(one);
    const levels = new Uint8Array(one.pixels * 3);
    const began = performance.now();
    drawFrames(draw, one, levels);
    const milliseconds = performance.now() - began;
    return {
      nanosecondsPerPixel: (milliseconds * 1e6) / (framesOf(one) * one.pixels),
      lastFrame: Buffer.from(levels).toString('hex'),
    };
  }

  /** Compiled and warm: the page plays a look for minutes, not for a moment. */
  private drawOf(one: Case): DrawProgram {
    const known = this.draws.get(one);
    if (known !== undefined) return known;
    const draw = compileProgram(one.program);
    this.draws.set(one, draw);
    for (let round = 0; round < 5; round++) drawFrames(draw, one, new Uint8Array(one.pixels * 3));
    return draw;
  }
}

const noKeys = new Int32Array(0);

function drawFrames(draw: DrawProgram, one: Case, levels: Uint8Array): void {
  const frames = framesOf(one);
  for (let frame = 0; frame < frames; frame++) {
    const { time, turn } = moments[frame]!;
    draw(levels, one.indices, one.places, time, turn, noKeys);
  }
}
