/** What a rehearsal reads off recorded frames. */
import { describe, expect, it } from 'vitest';
import { checkClock } from '../../codegen/rehearse/clock.ts';
import { compareFrames } from '../../codegen/rehearse/compare.ts';
import { lookPace, pace } from '../../codegen/rehearse/pace.ts';
import { readShown } from '../../codegen/rehearse/shown.ts';
import { traceOf } from '../../codegen/rehearse/trace.ts';
import { frameAt, hertz, momentWith } from './frames.ts';

describe('the global "shown"', () => {
  it('is read little-endian in the order of its fields', () => {
    const bytes = Uint8Array.of(1, 2, 3, 0x80, 5, 0, 0, 0, 9, 1, 0, 0, 2, 64, 0, 1, 3, 17);
    expect(readShown(bytes)).toEqual({
      ms: 0x80030201,
      uptimeMs: 5,
      look: 2,
      brightness: 64,
      blackout: false,
      paused: true,
      leaving: { look: 3, ms: 265, mix: 17 },
    });
  });

  it('leaves nothing where the leaving look is 255', () => {
    const bytes = new Uint8Array(18).fill(255, 16);
    expect(readShown(bytes).leaving).toBeNull();
  });
});

describe('comparing frames', () => {
  const drawn = () => Uint8Array.of(1, 2, 3);

  it('finds nothing where every byte is the same', () => {
    expect(compareFrames([frameAt({}), frameAt({ uptimeMs: 20 })], drawn)).toEqual([]);
  });

  it('places the first byte that differs, once a frame', () => {
    const wrong = frameAt({ uptimeMs: 20 }, { bytes: Uint8Array.of(1, 9, 9) });
    expect(compareFrames([frameAt({}), wrong], drawn)).toEqual([
      { frame: 1, moment: wrong.moment, byte: 1, sent: 9, expected: 2 },
    ]);
  });

  it.each<[string, Uint8Array, number]>([
    ['too short', Uint8Array.of(1, 2), 16],
    ['too long', Uint8Array.of(1, 2, 3, 0), 32],
    ['a bit too long', Uint8Array.of(1, 2, 3), 25],
  ])('finds a frame that is %s', (_, bytes, bits) => {
    expect(compareFrames([frameAt({}, { bytes, bits })], drawn)).toHaveLength(1);
  });
});

describe('the trace', () => {
  const trace = (...moments: Parameters<typeof momentWith>[0][]) =>
    traceOf(moments.map(momentWith), ['Dusk', 'Dawn'], []);

  it('is empty while a look goes on', () => {
    expect(trace({ ms: 0, uptimeMs: 3 }, { ms: 20, uptimeMs: 23 })).toEqual([]);
  });

  it('dates a look by its own clock, and tells a restart too', () => {
    expect(
      trace(
        { ms: 500, uptimeMs: 500 },
        { look: 1, ms: 7, uptimeMs: 520 },
        { look: 1, ms: 27, uptimeMs: 540 },
        { look: 1, ms: 4, uptimeMs: 560 },
      ),
    ).toEqual([
      { ms: 513, kind: 'look', value: 'Dawn' },
      { ms: 556, kind: 'look', value: 'Dawn' },
    ]);
  });

  it('dates a look right where the uptime has just begun anew', () => {
    const events = trace({ ms: 0xfffffff0, uptimeMs: 0xfffffff0 }, { look: 1, ms: 5, uptimeMs: 2 });
    expect(events).toEqual([{ ms: 0xfffffffd, kind: 'look', value: 'Dawn' }]);
  });

  it('dates a setting by the write that made it, if the sketch lets one see it', () => {
    const moments = [{ uptimeMs: 100 }, { uptimeMs: 150, blackout: true }, { uptimeMs: 200 }].map(momentWith);
    const settings = [
      { uptimeMs: 20, setting: 'blackout', value: 1 },
      { uptimeMs: 107, setting: 'brightness', value: 1 },
      { uptimeMs: 109, setting: 'blackout', value: 1 },
      { uptimeMs: 160, setting: 'blackout', value: 0 },
    ] as const;
    expect(traceOf(moments, ['Dusk'], settings)).toEqual([
      { ms: 109, kind: 'blackout', value: true },
      { ms: 160, kind: 'blackout', value: false },
    ]);
  });

  it('tells the events of one frame in the order look, brightness, blackout, pause', () => {
    const all = { look: 1, ms: 10, uptimeMs: 40, brightness: 128, blackout: true, paused: true };
    expect(trace({ ms: 20, uptimeMs: 20 }, all)).toEqual([
      { ms: 30, kind: 'look', value: 'Dawn' },
      { ms: 40, kind: 'brightness', value: 128 },
      { ms: 40, kind: 'blackout', value: true },
      { ms: 40, kind: 'pause', value: true },
    ]);
  });
});

describe('the clock', () => {
  const cyclesAt = (milliseconds: number) => milliseconds * 16_000;

  it('is right where uptime and look time go with the cycles', () => {
    const frames = [0, 5_000, 10_000].map((ms) => frameAt({ ms, uptimeMs: ms }));
    expect(checkClock({ frames, hertz }).clockErrorPercent).toBeCloseTo(0, 9);
  });

  it.each([
    [1.02, 2],
    [0.98, 2],
  ])('at %f of its pace is off by %f %%', (rate, percent) => {
    const frames = [0, 5_000, 10_000].map((ms) =>
      frameAt({ ms: ms * rate, uptimeMs: ms * rate }, { momentCycle: cyclesAt(ms) }),
    );
    const { clockErrorPercent, clockAheadMilliseconds } = checkClock({ frames, hertz });
    expect(clockErrorPercent).toBeCloseTo(percent, 6);
    expect(Math.max(...clockAheadMilliseconds.map(Math.abs))).toBeCloseTo(200, 6);
  });

  it('counts look time only while a look goes on', () => {
    const frames = [
      frameAt({ ms: 0, uptimeMs: 0 }),
      frameAt({ ms: 1_000, uptimeMs: 1_000 }),
      frameAt({ look: 1, ms: 0, uptimeMs: 2_000 }),
      frameAt({ look: 1, ms: 500, uptimeMs: 2_500, paused: true }),
      frameAt({ look: 1, ms: 500, uptimeMs: 9_000, paused: true }),
    ];
    expect(checkClock({ frames, hertz }).clockErrorPercent).toBeCloseTo(0, 9);
  });
});

describe('the pace', () => {
  const frames = [
    frameAt({ uptimeMs: 0 }),
    frameAt({ uptimeMs: 20 }),
    frameAt({ uptimeMs: 40 }),
    frameAt({ look: 1, uptimeMs: 60 }, { startCycle: 60 * 16_000 + 5_000 }),
    frameAt({ look: 1, uptimeMs: 100 }, { startCycle: 100 * 16_000 + 5_000 }),
  ];

  it('counts frames a second and cycles a pixel', () => {
    const whole = pace({ frames, hertz }, 10);
    expect(whole.framesPerSecond).toBeCloseTo(4 / 0.10025, 6);
    expect(whole.cyclesPerPixel).toBeCloseTo((3 * 1_000 + 2 * 5_000) / 5 / 10, 6);
  });

  it('counts them look by look, leaving out looks that were never on', () => {
    expect(lookPace({ frames, hertz }, 10, ['Dusk', 'Dawn', 'Noon'])).toEqual([
      { name: 'Dusk', frames: 3, framesPerSecond: 50, cyclesPerPixel: 100 },
      { name: 'Dawn', frames: 2, framesPerSecond: 25, cyclesPerPixel: 500 },
    ]);
  });

  it('is 0 without frames', () => {
    expect(pace({ frames: [], hertz }, 10)).toEqual({ framesPerSecond: 0, cyclesPerPixel: 0 });
  });
});
