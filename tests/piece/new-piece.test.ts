/** The first piece of a maker: sound on every board, with every part. */
import { describe, expect, test } from 'vitest';
import { applyEdit } from '../../engine/edit/apply.ts';
import { newRun } from '../../engine/edit/offers/add-run.ts';
import { blankLook } from '../../engine/edit/offers/blank-look.ts';
import { chipNames, chips } from '../../engine/parts/chips.ts';
import { pixelPartNames } from '../../engine/parts/pixels.ts';
import { usualPins } from '../../engine/parts/usual-pins.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import { type FirstAnswers, newPiece } from '../../engine/piece/new-piece.ts';
import type { Shape } from '../../engine/piece/schema.ts';

const ring: Shape = {
  kind: 'ring',
  count: 24,
  centre: [0, 0],
  diameterMillimetres: 90,
  firstDegrees: 90,
  clockwise: true,
  flattening: 1,
};
const answers: FirstAnswers = {
  name: 'Lantern cap',
  board: 'atmega328p',
  part: 'ws2812b',
  limitMilliamps: 500,
  firstRun: { name: 'ring', shape: ring },
};

const kits = chipNames.flatMap((board) => pixelPartNames.map((part) => [board, part] as const));

describe.each(kits)('a first piece on %s with %s', (board, part) => {
  test.each([undefined, 0, 1, 2] as const)('is sound and has nothing to warn of, buttons: %s', (buttons) => {
    const piece = newPiece({ ...answers, board, part, ...(buttons === undefined ? {} : { buttons }) });
    expect(checkPiece(piece)).toEqual({ value: piece, diagnostics: [] });
    expect(piece.controls.buttons).toHaveLength(buttons ?? 1);
    expect(piece.lines[0]).toMatchObject({ part, runs: [{ name: 'ring', flat: ring }] });
  });
});

describe('usual pins', () => {
  test.each(chipNames)('of %s are different, on the chip, and none has a caution', (chip) => {
    const { line, buttons } = usualPins[chip];
    expect(new Set([line, ...buttons]).size).toBe(buttons.length + 1);
    const listed = chips[chip].pins;
    if (listed === null) return;
    for (const pin of [line, ...buttons]) {
      const onChip = listed.find(({ number }) => number === pin);
      expect(onChip).toBeDefined();
      expect(onChip!.caution).toBeUndefined();
    }
  });
});

describe('a first piece', () => {
  const piece = newPiece({ ...answers, keepAliveMilliamps: 90 });

  test('is dark for 8 s, steps on by a press and goes dark by a hold', () => {
    expect(piece.looks).toEqual([
      { name: 'First light', lengthMilliseconds: 8000, dissolveMilliseconds: 0, tracks: [{ clips: [] }] },
    ]);
    expect(piece.controls.buttons).toEqual([
      { name: 'button', pin: 2, press: { do: 'next-look' }, hold: { do: 'blackout' } },
    ]);
  });

  test('has the supply that was said, and begins at a quarter of the brightness', () => {
    expect(piece.supply).toEqual({ limitMilliamps: 500, volts: 5, keepAliveMilliamps: 90 });
    expect(piece.output.startBrightness).toBe(64);
  });

  test('of wrong answers is refused by the check, not by an exception', () => {
    const wrong = newPiece({ ...answers, name: '', limitMilliamps: -1 });
    expect(checkPiece(wrong).diagnostics.map(({ path }) => path)).toEqual(['name', 'supply.limitMilliamps']);
  });

  test('gets more runs at the end of its line, and more looks on its thread, by free names', () => {
    const run = newRun(piece, ring, 'ring');
    expect(run).toMatchObject({ line: 0, index: 1, run: { name: 'ring 2', flat: ring } });
    const look = blankLook(piece, 'First light', 'First light');
    expect(look).toMatchObject({ index: 1, look: { name: 'First light 2' } });
    for (const edit of [run, look]) {
      expect(checkPiece(applyEdit(piece, edit).value?.piece).diagnostics).toEqual([]);
    }
  });
});
