import { describe, expect, test } from 'vitest';
import { folderWith, jsonOf, lanterns, run } from './run.ts';

const samples = ['samples/ferrymans-hat.piece.json', 'samples/moth-wings.piece.json'];

describe('power', () => {
  test('by hand: two red lanterns, lit for half of the time', async () => {
    const folder = folderWith('it.json', lanterns);
    const outcome = await run(['power', 'it.json', '--json'], folder);
    expect(outcome.exitCode).toBe(0);
    // Lit 11.8 + 40 * 64 / 255 = 21.839 mA, dark 11.8 mA, half each: 16.82 mA, 5 V, a second.
    const lit = 11.8 + (40 * 64) / 255;
    const average = (lit + 11.8) / 2;
    const { pieces } = jsonOf(outcome);
    expect(pieces).toEqual([
      {
        file: 'it.json',
        name: 'Two lanterns',
        looks: [
          {
            name: 'Low tide',
            averageMilliamps: expect.closeTo(average, 9),
            peakMilliamps: expect.closeTo(lit, 9),
            lowestTenSecondMilliamps: expect.closeTo(average, 6),
            energyPerLoopMilliwattHours: expect.closeTo((average * 5) / 3600, 9),
          },
          expect.objectContaining({ name: 'High tide', peakMilliamps: expect.closeTo(11.8, 9) }),
        ],
        runtimeHours: null,
        warnings: [
          {
            code: 'power-bank-may-switch-off',
            message: expect.stringContaining('"Low tide", "High tide"'),
            advice: expect.any(String),
          },
        ],
      },
    ]);
  });

  test('the average is the mean of what frames tells, tick by tick', async () => {
    const { pieces } = jsonOf(await run(['power', samples[0]!, '--json']));
    const { name, averageMilliamps, peakMilliamps } = pieces[0].looks[2];
    const ticks = Array.from({ length: 12_000 / 20 }, (_, tick) => tick * 20).join(',');
    const { frames } = jsonOf(await run(['frames', samples[0]!, '--look', name, '--at', ticks, '--json']));
    const drawn = frames.map(({ milliamps }: { milliamps: number }) => milliamps);
    expect(averageMilliamps).toBeCloseTo(drawn.reduce((a: number, b: number) => a + b, 0) / drawn.length, 9);
    expect(peakMilliamps).toBe(Math.max(...drawn));
  });

  test('pieces stand side by side, with the usual cautions below', async () => {
    const { exitCode, output } = await run(['power', ...samples]);
    expect(exitCode).toBe(0);
    expect(output).toMatch(/^piece +look +average +peak +lowest 10 s +energy a loop\n/);
    expect(output).toMatch(/^Ferryman's hat +Lamp lit +\d+\.\d mA/m);
    expect(output).toMatch(/^Moth wings +\S/m);
    expect(output).toContain('fuse its supply');
  });
});
