/** Our sketch core against the cycles of the chip. */
import { describe, expect, it } from 'vitest';
import { buildFirmware } from '../../codegen/rehearse/build.ts';
import { checkClock } from '../../codegen/rehearse/clock.ts';
import { buildFixture, fixtureSketch, runFixture } from './fixture.ts';

describe('the sketch core', () => {
  it('millis and micros keep time: a round of TIMER0 is 1.024 ms, and the fraction is not lost', async () => {
    const bare = fixtureSketch(1, [
      ['shown.ms = look_ms', 'shown.ms = micros()'],
      ['shown.uptime_ms = uptime_ms', 'shown.uptime_ms = millis()'],
    ]);
    const recording = runFixture(await buildFixture(bare), 3_000);
    const { clockAheadMilliseconds } = checkClock(recording);
    const [least, greatest] = clockAheadMilliseconds;
    // Whole milliseconds lag by up to one, and another one until the timer's next round.
    expect(greatest).toBeLessThan(0.05);
    expect(least).toBeGreaterThan(-2.1);
    for (const { moment, momentCycle } of recording.frames) {
      // The clock starts some cycles after power-up, and is read some cycles before the moment is written.
      const micros = momentCycle / 16;
      expect(moment.ms).toBeGreaterThan(micros - 50);
      expect(moment.ms).toBeLessThan(micros);
    }
  });

  it('micros never steps back where a round ends', async () => {
    const restless = fixtureSketch(1, [
      [
        'catch_up();\n  shown.ms = look_ms',
        'static uint32_t last, back;\n  for (uint16_t i = 0; i < 500; i++) {\n    const uint32_t now = micros();\n    if (now < last) back++;\n    last = now;\n  }\n  shown.ms = back',
      ],
    ]);
    const { frames } = runFixture(await buildFixture(restless), 1_000);
    expect(frames.length).toBeGreaterThan(100);
    expect(frames.at(-1)!.moment.ms).toBe(0);
  });

  it('a button without its pull-up floats and seems pressed', async () => {
    const floating = fixtureSketch(8, [['INPUT_PULLUP', 'INPUT']]);
    const { frames } = runFixture(await buildFixture(floating), 100);
    expect(frames.at(-1)!.moment.look).toBe(1);
    const pulledUp = runFixture(await buildFixture(fixtureSketch(8)), 100);
    expect(pulledUp.frames.at(-1)!.moment.look).toBe(0);
  });

  it.each(['abs', 'min', 'max', 'bit', 'radians', 'degrees', 'round', 'sq', 'byte', 'A0', 'PI'])(
    'lets a sketch that calls something of its own "%s" clash',
    async (name) => {
      const clash = fixtureSketch(8, [
        ['static uint8_t presses;', `static uint8_t presses;\nint ${name}(int a, int b);`],
      ]);
      const { diagnostics } = await buildFirmware(clash);
      expect(diagnostics.map(({ code }) => code)).toEqual(['sketch-does-not-compile']);
    },
  );
});
