import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { frame, stillMoment } from '../../engine/look/frame.ts';
import { prepareScore } from '../../engine/look/prepare.ts';
import type { Score } from '../../engine/look/score.ts';
import { loadPiece } from '../../engine/piece/load.ts';
import type { PieceInput } from '../../engine/piece/schema.ts';
import { reportPower } from '../../engine/power/report.ts';
import { lineOf, pieceWith } from '../support/pieces.ts';

function scoreWith(changes: Partial<PieceInput>): Score {
  const { value, diagnostics } = prepareScore(pieceWith(changes));
  if (value === undefined) throw new Error(diagnostics[0]?.message);
  return value;
}

/** White for the first half of each second, dark for the second. */
const blinking: PieceInput['looks'] = [
  {
    name: 'Signal',
    lengthMilliseconds: 1000,
    tracks: [{ clips: [{ pattern: 'still/1', lengthMilliseconds: 500, parameters: { tint: '#ffffff' } }] }],
  },
];

const codes = (score: Score) => reportPower(score).warnings.map(({ code }) => code);

test('P1 P2 by hand: ten pixels blink white at full brightness', () => {
  const score = scoreWith({
    lines: [lineOf(10)],
    looks: blinking,
    output: { startBrightness: 255 },
    supply: { limitMilliamps: 2000 },
  });
  const { looks, runtimeHours } = reportPower(score);
  // At rest 10.4 + 10 * 0.7 = 17.4 mA; lit 10 * 60 = 600 mA more; half of the ticks each.
  expect(looks[0]!.averageMilliamps).toBeCloseTo(317.4, 9);
  expect(looks[0]!.peakMilliamps).toBeCloseTo(617.4, 9);
  // Ten whole rounds: the mean again. 317.4 mA * 5 V for a second is 0.4408 mWh.
  expect(looks[0]!.lowestTenSecondMilliamps).toBeCloseTo(317.4, 6);
  expect(looks[0]!.energyPerLoopMilliwattHours).toBeCloseTo((317.4 * 5) / 3600, 9);
  expect(runtimeHours).toBeNull();
});

test('P1 P2 by hand: brightness 64 draws the light of 64', () => {
  const score = scoreWith({ lines: [lineOf(10)], looks: blinking, supply: { limitMilliamps: 2000 } });
  // Factor 64, drive (65280 * 64 >> 8 + 128) >> 8 = 64: 10 * 60 * 64 / 255 = 150.588 mA above 17.4.
  expect(reportPower(score).looks[0]!.peakMilliamps).toBeCloseTo(17.4 + (600 * 64) / 255, 9);
});

test('P2 is the mean and the peak of the frames of every sample and look', () => {
  const files = readdirSync('samples').filter((file) => file.endsWith('.piece.json'));
  expect(files.length).toBeGreaterThan(0);
  for (const file of files) {
    const score = prepareScore(loadPiece(readFileSync(`samples/${file}`, 'utf8')).value!).value!;
    const { tickMilliseconds, output } = score.piece;
    for (const [index, look] of reportPower(score).looks.entries()) {
      const { name, lengthMilliseconds } = score.looks[index]!;
      const drawn: number[] = [];
      for (let ms = 0; ms < lengthMilliseconds; ms += tickMilliseconds) {
        drawn.push(frame(score, stillMoment(index, ms, output.startBrightness)).milliamps);
      }
      expect(look.name).toBe(name);
      expect(look.averageMilliamps).toBeCloseTo(drawn.reduce((a, b) => a + b, 0) / drawn.length, 9);
      expect(look.peakMilliamps).toBe(Math.max(...drawn));
    }
  }
});

test('P4 limiter-active tells the look and how often', () => {
  const score = scoreWith({
    lines: [lineOf(10)],
    looks: blinking,
    output: { startBrightness: 255 },
    supply: { limitMilliamps: 300 },
  });
  const report = reportPower(score);
  expect(report.looks[0]!.peakMilliamps).toBeLessThanOrEqual(300);
  expect(report.warnings[0]).toMatchObject({
    code: 'limiter-active',
    message: 'The limit of 300 mA dims "Signal" (50 % of its frames).',
  });
});

test('P4 peak-near-limit from nine tenths of the limit on', () => {
  const peakAt = (limitMilliamps: number) =>
    codes(
      scoreWith({
        lines: [lineOf(10)],
        looks: blinking,
        output: { startBrightness: 255 },
        supply: { limitMilliamps },
      }),
    );
  expect(peakAt(680)).toContain('peak-near-limit');
  expect(peakAt(690)).not.toContain('peak-near-limit');
});

test('P4 power-bank-may-switch-off below 60 mA, not with a keep-alive current and not on other supplies', () => {
  const dark = (supply: PieceInput['supply']) => codes(scoreWith({ ...(supply ? { supply } : {}) }));
  expect(dark({})).toContain('power-bank-may-switch-off');
  expect(dark({ keepAliveMilliamps: 60 })).not.toContain('power-bank-may-switch-off');
  expect(dark({ volts: 3.7 })).not.toContain('power-bank-may-switch-off');
});

test('P4 keep-alive-out-of-reach where all pixels together cannot draw it', () => {
  const awake = (count: number) =>
    codes(scoreWith({ lines: [lineOf(count)], supply: { limitMilliamps: 1000, keepAliveMilliamps: 200 } }));
  expect(awake(3)).toContain('keep-alive-out-of-reach');
  expect(awake(4)).not.toContain('keep-alive-out-of-reach');
});

test('P4 limit-below-rest where dark pixels use it up', () => {
  const score = scoreWith({ lines: [lineOf(100)], looks: blinking, supply: { limitMilliamps: 80 } });
  expect(codes(score)).toContain('limit-below-rest');
  expect(new Set(frame(score, stillMoment(0, 0, 255)).drive)).toEqual(new Set([0]));
});
