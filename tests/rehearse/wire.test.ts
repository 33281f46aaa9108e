import { describe, expect, it } from 'vitest';
import { type WireFrame, WireReader } from '../../codegen/rehearse/wire.ts';

const hertz = 16_000_000;
const latchCycles = 4_800;

/** Plays pulses of `[high, low]` cycles and returns what the reader made of them. */
function read(pulses: readonly (readonly [number, number])[]) {
  const frames: WireFrame[] = [];
  const starts: number[] = [];
  const reader = new WireReader(hertz);
  reader.onFrameStart = (cycle) => starts.push(cycle);
  reader.onFrameEnd = (frame) => frames.push(frame);
  let cycle = 100;
  for (const [high, low] of pulses) {
    reader.edge(cycle, true);
    reader.edge(cycle + high, false);
    cycle += high + low;
  }
  return { frames, starts, ...reader.finish(cycle) };
}

const zero = [5, 15] as const;
const one = [14, 6] as const;
const bitsOf = (byte: number) => Array.from({ length: 8 }, (_, i) => ((byte >> (7 - i)) & 1 ? one : zero));
/** The last low of a frame is its latch. */
const frameOf = (...bytes: number[]) => {
  const pulses: (readonly [number, number])[] = bytes.flatMap(bitsOf);
  pulses.push([pulses.pop()![0], latchCycles]);
  return pulses;
};

describe('reading the wire', () => {
  it('takes bytes with the highest bit first, and frames from latch to latch', () => {
    const { frames, starts, outsideCount } = read([...frameOf(0x00, 0xff, 0xa5), ...frameOf(0x12)]);
    expect(frames.map(({ bytes }) => [...bytes])).toEqual([[0x00, 0xff, 0xa5], [0x12]]);
    expect(frames.map(({ bits }) => bits)).toEqual([24, 8]);
    expect(starts).toEqual(frames.map(({ startCycle }) => startCycle));
    expect(frames[0]!.endCycle).toBe(100 + 23 * 20 + 14);
    expect(outsideCount).toBe(0);
  });

  it('keeps the shortest and the longest of each kind, and the latch is none of them', () => {
    const { pulses, outsideCount } = read([
      [4, 15],
      [6, 12],
      [15, 5],
      [12, 6],
      [5, latchCycles],
    ]);
    expect(pulses).toEqual({
      t0h: [250, 375],
      t0l: [750, 937.5],
      t1h: [750, 937.5],
      t1l: [312.5, 375],
    });
    expect(outsideCount).toBe(0);
  });

  it('places what is outside: which pulse, how long, in which bit of which frame', () => {
    const late = frameOf(0xf0);
    late[5] = [5, 17];
    const { outside, outsideCount } = read([...frameOf(1), ...late]);
    expect(outside).toEqual([{ kind: 't0l', nanoseconds: 17 * 62.5, frame: 1, bit: 5 }]);
    expect(outsideCount).toBe(1);
  });

  it('a rest that is too short for a latch is a pulse outside, and the frames run together', () => {
    const hasty = frameOf(1);
    hasty[7] = [14, latchCycles - 1];
    const { frames, outside } = read([...hasty, ...frameOf(2)]);
    expect(frames.map(({ bytes }) => [...bytes])).toEqual([[1, 2]]);
    expect(outside).toEqual([{ kind: 't1l', nanoseconds: (latchCycles - 1) * 62.5, frame: 0, bit: 7 }]);
  });

  it('counts bits that make no whole byte', () => {
    const { frames } = read([...bitsOf(7), one, [5, latchCycles]]);
    expect(frames.map(({ bits, bytes }) => [bits, bytes.length])).toEqual([[10, 1]]);
  });

  it('a frame that is not latched at the end does not count', () => {
    expect(read(bitsOf(7)).frames).toEqual([]);
  });
});
