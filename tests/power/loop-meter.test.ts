import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LoopMeter } from '../../engine/power/loop-meter.ts';

function metered(samples: readonly number[], tickMilliseconds: number, volts = 5) {
  const meter = new LoopMeter(samples.length * tickMilliseconds, tickMilliseconds, volts);
  for (const milliamps of samples) meter.take({ milliamps, limited: milliamps >= 400 });
  expect(meter.nextMs).toBeNull();
  return meter.report();
}

test('P2 asks for one frame a tick, from 0 to before the end', () => {
  const meter = new LoopMeter(50, 20, 5);
  const asked: number[] = [];
  for (let ms = meter.nextMs; ms !== null; ms = meter.nextMs) {
    asked.push(ms);
    meter.take({ milliamps: 1, limited: false });
  }
  expect(asked).toEqual([0, 20, 40]);
});

test('P2 by hand: average, peak, energy', () => {
  // 100, 200, 600 mA for a second each: 300 mA on average; 0.3 A * 5 V * 3 s / 3600 = 1.25 mWh.
  const report = metered([100, 200, 600], 1000);
  expect(report.averageMilliamps).toBe(300);
  expect(report.peakMilliamps).toBe(600);
  expect(report.energyPerLoopMilliwattHours).toBeCloseTo(1.25, 12);
  expect(report.limitedShare).toBeCloseTo(1 / 3, 12);
  expect(metered([100, 200, 600], 1000, 3.7).energyPerLoopMilliwattHours).toBeCloseTo(0.925, 12);
});

test('P3 by hand: the lowest ten seconds may begin before the end of the loop', () => {
  // Twenty seconds, dark for the last four and the first six.
  const samples = Array.from({ length: 20 }, (_, second) => (second < 6 || second >= 16 ? 30 : 300));
  expect(metered(samples, 1000).lowestTenSecondMilliamps).toBeCloseTo(30, 12);
});

test('P3 a loop shorter than ten seconds is looked at over as many rounds as it takes', () => {
  // Four seconds, 10 20 30 40: two rounds (200) and the lowest two in a row (30) make ten seconds.
  expect(metered([10, 20, 30, 40], 1000).lowestTenSecondMilliamps).toBeCloseTo(23, 12);
  expect(metered([10, 20, 30, 40, 50], 1000).lowestTenSecondMilliamps).toBeCloseTo(30, 12);
});

test('P3 is the smallest of all windows over the looped samples', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 0, max: 2000 }), { minLength: 1, maxLength: 60 }),
      fc.constantFrom(20, 300, 500, 1000),
      (samples, tick) => {
        const window = Math.ceil(10_000 / tick);
        const means = samples.map((_, start) => {
          let total = 0;
          for (let k = 0; k < window; k++) total += samples[(start + k) % samples.length]!;
          return total / window;
        });
        const report = metered(samples, tick);
        expect(report.lowestTenSecondMilliamps).toBeCloseTo(Math.min(...means), 6);
        expect(report.lowestTenSecondMilliamps).toBeLessThanOrEqual(report.averageMilliamps + 1e-9);
        expect(report.averageMilliamps).toBeLessThanOrEqual(report.peakMilliamps + 1e-9);
      },
    ),
    { seed: 20260610, numRuns: 300 },
  );
});
