/** Figures of pixel parts against the tables of the datasheets that are sold under their numbers. */
import { describe, expect, test } from 'vitest';
import { pixelPartNames, pixelParts, type Window } from '../../engine/parts/pixels.ts';

interface Timing {
  readonly zeroHigh: Window;
  readonly zeroLow: Window;
  readonly oneHigh: Window;
  readonly oneLow: Window;
}

const about = (nanoseconds: number, tolerance: number): Window => [
  nanoseconds - tolerance,
  nanoseconds + tolerance,
];

/** WS2812B datasheets, table "data transfer time"; the newest by quotations of it. */
const revisions: Readonly<Record<string, Timing>> = {
  'revision a': {
    zeroHigh: about(400, 150),
    zeroLow: about(850, 150),
    oneHigh: about(800, 150),
    oneLow: about(450, 150),
  },
  'revision b': {
    zeroHigh: about(350, 150),
    zeroLow: about(900, 150),
    oneHigh: about(900, 150),
    oneLow: about(350, 150),
  },
  V5: { zeroHigh: [220, 380], zeroLow: [580, 1000], oneHigh: [580, 1000], oneLow: [220, 420] },
};

describe('WS2812B', () => {
  const { wire } = pixelParts.ws2812b;

  test.each(['zeroHigh', 'zeroLow', 'oneHigh', 'oneLow'] as const)(
    '%s is the intersection of all revisions, no wider and no narrower',
    (half) => {
      const windows = Object.values(revisions).map((timing) => timing[half]);
      expect(wire[half]).toEqual([
        Math.max(...windows.map(([min]) => min)),
        Math.min(...windows.map(([, max]) => max)),
      ]);
    },
  );

  test('a bit of 20 cycles at 16 MHz has room in the windows: 4 to 6 cycles high for a zero, 12 to 15 for a one', () => {
    const cycle = 62.5;
    const cycles = ([min, max]: Window) => [Math.ceil(min / cycle), Math.floor(max / cycle)];
    expect(cycles(wire.zeroHigh)).toEqual([4, 6]);
    expect(cycles(wire.zeroLow)).toEqual([12, 16]);
    expect(cycles(wire.oneHigh)).toEqual([12, 15]);
    expect(cycles(wire.oneLow)).toEqual([5, 6]);
  });

  test('rests longer than every revision asks: 50, 50 and 280 us', () => {
    expect(wire.latchNanoseconds).toBeGreaterThan(280_000);
  });

  test('sends green, red, blue', () => {
    const names = ['red', 'green', 'blue'];
    const sent: string[] = [];
    for (const [channel, at] of pixelParts.ws2812b.order.entries()) sent[at] = names[channel]!;
    expect(sent).toEqual(['green', 'red', 'blue']);
  });

  test('needs 3.5 V on its data line at 5 V, which a 5 V chip gives and a 3.3 V chip cannot', () => {
    expect(pixelParts.ws2812b.logicHighShare * 5).toBeCloseTo(3.5, 9);
  });
});

test.each(pixelPartNames)('%s: every channel has one place and one current', (name) => {
  const part = pixelParts[name];
  expect([...part.order].sort()).toEqual(Array.from({ length: part.channels }, (_, i) => i));
  expect(part.channelTenths).toHaveLength(part.channels);
  for (const tenths of [...part.channelTenths, part.quiescentTenths]) {
    expect(Number.isInteger(tenths) && tenths > 0).toBe(true);
  }
});

test.each(pixelPartNames)('%s: every figure says where it comes from', (name) => {
  expect(pixelParts[name].sources.length).toBeGreaterThan(4);
  for (const { about: figure, from } of pixelParts[name].sources) {
    expect(figure).not.toBe('');
    expect(from).not.toBe('');
  }
});
