import { expect, test } from 'vitest';
import { folderWith, jsonOf, lanterns, run } from './run.ts';

test('rehearse compares every frame and tells what the button did', async () => {
  const folder = folderWith('it.json', lanterns);
  const outcome = await run(
    ['rehearse', 'it.json', '--for', '1500', '--press', '300:100,700:700', '--json'],
    folder,
  );
  const report = jsonOf(outcome);
  expect(outcome.exitCode).toBe(0);
  expect(report).toMatchObject({
    board: 'atmega328p',
    mismatches: 0,
    pulses: {
      t0h: expect.any(Array),
      t0l: expect.any(Array),
      t1h: expect.any(Array),
      t1l: expect.any(Array),
    },
    clockErrorPercent: expect.any(Number),
    framesPerSecond: expect.any(Number),
    cyclesPerPixel: expect.any(Number),
    flashBytes: expect.any(Number),
    ramBytes: expect.any(Number),
    stackBytes: expect.any(Number),
  });
  expect(report.frames).toBeGreaterThan(50);
  const trace = report.trace.map(({ kind, value }: { kind: string; value: unknown }) => [kind, value]);
  expect(trace).toEqual([
    ['look', 'High tide'],
    ['blackout', true],
  ]);
});

test('rehearse as text: the figures, then the trace', async () => {
  const folder = folderWith('it.json', lanterns);
  const { exitCode, output } = await run(
    ['rehearse', 'it.json', '--for', '800', '--press', '300:100'],
    folder,
  );
  expect(exitCode).toBe(0);
  expect(output).toMatch(/^board +atmega328p\nframes +\d+, of which 0 differ\n/);
  expect(output).toMatch(/\n\n\d+ look High tide\n/);
});
