/**
 * The wire against the WS2812B datasheet, on two emulators that were written by different people. The
 * windows are typed here a second time, from the tables of the datasheet's revisions, to check ours.
 */
import { describe, expect, it } from 'vitest';
import { ws2812bOnAvr } from '../../codegen/drivers/ws2812b-avr.ts';
import { buildFirmware } from '../../codegen/rehearse/build.ts';
import { compareFrames } from '../../codegen/rehearse/compare.ts';
import { type PulseKind, ws2812bWindows } from '../../codegen/rehearse/wire.ts';
import { buildFixture, fixtureFrame, fixturePins, fixtureSketch, runFixture } from './fixture.ts';
import { runInSimavr } from './simavr.ts';

/** Nanoseconds, nominal and tolerance or from and to. */
const datasheets: Record<PulseKind, [number, number]>[] = [
  // WS2812B, first revision: 0.4, 0.85, 0.8, 0.45 us, each +-150 ns
  { t0h: [250, 550], t0l: [700, 1000], t1h: [650, 950], t1l: [300, 600] },
  // WS2812B, later issue: 0.35, 0.9, 0.9, 0.35 us, each +-150 ns
  { t0h: [200, 500], t0l: [750, 1050], t1h: [750, 1050], t1l: [200, 500] },
  // WS2812B-V5 generation, as quoted by vendors
  { t0h: [220, 380], t0l: [580, 1000], t1h: [580, 1000], t1l: [220, 420] },
];

const kinds = ['t0h', 't0l', 't1h', 't1l'] as const;

describe('the windows of a pulse', () => {
  it.each(kinds)('%s: are the intersection of the revisions of the datasheet', (kind) => {
    expect(ws2812bWindows[kind].min).toBe(Math.max(...datasheets.map((sheet) => sheet[kind][0])));
    expect(ws2812bWindows[kind].max).toBe(Math.min(...datasheets.map((sheet) => sheet[kind][1])));
  });
});

describe('the driver for the ATmega328P', () => {
  it('sends every pulse inside the windows and every byte as it is, in avr8js and in simavr', async () => {
    const pixels = 60;
    const firmware = await buildFixture(fixtureSketch(pixels));
    const runs = [runFixture(firmware, 500), await runInSimavr(firmware, fixturePins.data, 500)];
    for (const recording of runs) {
      expect(recording.frames.length).toBeGreaterThan(50);
      expect(recording.outside).toEqual([]);
      // 5, 15, 14 and 6 cycles of 62.5 ns, never one more: no gap between bytes either.
      expect(recording.pulses).toEqual({
        t0h: [312.5, 312.5],
        t0l: [937.5, 937.5],
        t1h: [875, 875],
        t1l: [375, 375],
      });
      expect(compareFrames(recording.frames, (moment) => fixtureFrame(pixels, moment))).toEqual([]);
    }
  });

  it('rests the wire for the latch between two frames, and hardly longer when nothing else is to be done', async () => {
    const idle = fixtureSketch(30, [['BUSY_CYCLES_PER_PIXEL = 200', 'BUSY_CYCLES_PER_PIXEL = 0']]);
    const { frames } = runFixture(await buildFixture(idle), 200);
    const rests = frames.slice(1).map(({ startCycle }, i) => (startCycle - frames[i]!.endCycle) / 16);
    expect(Math.min(...rests)).toBeGreaterThanOrEqual(300);
    expect(Math.min(...rests)).toBeLessThan(340);
  });

  it.each([0, 7, 8, 13, 14, 19])(
    'sends on pin %i and leaves the other pins of its port alone',
    async (pin) => {
      const neighbour = pin === 7 || pin === 13 || pin === 19 ? pin - 1 : pin + 1;
      const text = fixtureSketch(4, [
        ['PIXEL_PIN = 6', `PIXEL_PIN = ${pin}`],
        ['BUTTON_PIN = 2', 'BUTTON_PIN = 5'],
        [
          'digitalWrite(PIXEL_PIN, LOW);',
          `digitalWrite(PIXEL_PIN, LOW);\n  pinMode(${neighbour}, INPUT_PULLUP);`,
        ],
      ]);
      const firmware = await buildFixture(text);
      const onPin = await runInSimavr(firmware, pin, 20);
      expect(onPin.outside).toEqual([]);
      expect(compareFrames(onPin.frames, (moment) => fixtureFrame(4, moment))).toEqual([]);
      expect(onPin.frames.length).toBeGreaterThan(5);
      expect((await runInSimavr(firmware, neighbour, 20)).frames).toEqual([]);
    },
  );

  it('a 1 of 5 cycles is caught: it arrives as a 0', async () => {
    const text = fixtureSketch(60, [['"out  %[port], %[level]  ', '"out  %[port], %[low]  ']]);
    const { frames, pulses } = runFixture(await buildFixture(text), 200);
    const wrong = compareFrames(frames, (moment) => fixtureFrame(60, moment));
    expect(pulses.t1h).toBeNull();
    expect(wrong.length).toBe(frames.length);
  });

  const wait = (cycles: string) => `"rjmp .+0                \\n\\t"  // ${cycles}  wait\n      `;
  it.each<[string, PulseKind, string, string]>([
    ['a 1 that is 4 cycles too short', 't1h', wait(' 8 -  9') + wait('10 - 11'), ''],
    [
      'a 0 that is 2 cycles too long',
      't0h',
      '"out  %[port], %[level]',
      '"rjmp .+0\\n\\t" "out  %[port], %[level]',
    ],
    ['a gap of 1 cycle between bytes', 't1l', '"ld   %[data]', '"nop\\n\\t" "ld   %[data]'],
    ['a gap of 2 cycles between bytes', 't0l', '"ld   %[data]', '"rjmp .+0\\n\\t" "ld   %[data]'],
  ])('%s is caught', async (_, kind, from, to) => {
    const firmware = await buildFixture(fixtureSketch(60, [[from, to]]));
    const { outsideCount, pulses } = runFixture(firmware, 200);
    const [shortest, longest] = pulses[kind]!;
    const { min, max } = ws2812bWindows[kind];
    expect(outsideCount).toBeGreaterThan(0);
    expect(shortest < min || longest > max).toBe(true);
    expect((await runInSimavr(firmware, fixturePins.data, 100)).outside.length).toBeGreaterThan(0);
  });

  it('says in plain words what is wrong with the chip, the clock or the pin', async () => {
    const driver = ws2812bOnAvr([6]).text;
    const messageFor = async (edit: (text: string) => string) =>
      (await buildFirmware(edit(fixtureSketch(8)))).diagnostics[0]?.message ?? '';
    expect(await messageFor((text) => `#undef __AVR_ATmega328P__\n${text}`)).toMatch(
      /made for an ATmega328P/,
    );
    expect(await messageFor((text) => `#undef F_CPU\n#define F_CPU 8000000UL\n${text}`)).toMatch(/16 MHz/);
    expect(await messageFor((text) => text.replace('PIXEL_PIN = 6', 'PIXEL_PIN = 20'))).toMatch(
      /pin from 0 to 19/,
    );
    expect(driver).toContain('#error');
  });
});
