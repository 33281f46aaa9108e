/** The editor of buttons without a browser: pins, times, steps. Rules: app/web/SPEC.md. */
import { describe, expect, test } from 'vitest';
import { actionChoices, keyOfAction } from '../../app/web/controls/actions.ts';
import { consequenceWords, pressDelay } from '../../app/web/controls/consequence.ts';
import { freePin, pinCaution, pinChoices } from '../../app/web/controls/pins.ts';
import { addedStep, byteOf, percentOf, withStep } from '../../app/web/controls/steps.ts';
import { ButtonReader } from '../../engine/controls/button.ts';
import { chips } from '../../engine/parts/chips.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import type { Action, Button } from '../../engine/piece/schema.ts';
import { samplePiece } from './browser/samples.ts';

const parasol = samplePiece('jellyfish-parasol');
const times = parasol.controls;
const next: Action = { do: 'next-look' };

describe('B8 pins', () => {
  test('are those of the board, and those in use say what for', () => {
    const [handle, ferrule] = parasol.controls.buttons;
    const choices = pinChoices(parasol, handle!.name)!;
    expect(choices.map(({ number }) => number)).toEqual(
      chips[parasol.board].pins!.map(({ number }) => number),
    );
    const taken = choices.filter((choice) => choice.taken);
    expect(taken.map(({ number }) => number).sort()).toEqual([parasol.lines[0]!.pin, ferrule!.pin].sort());
    expect(taken.find(({ number }) => number === ferrule!.pin)!.words).toContain(ferrule!.name);
    expect(pinChoices({ ...parasol, board: 'host' }, '')).toBeNull();
    expect(pinCaution(parasol, 13)).toMatch(/^Pin 13 has a lamp/);
    expect(pinCaution(parasol, 2)).toBeNull();
  });

  test('that are offered to a new button are taken without a word, as long as there are any', () => {
    const piece = structuredClone(parasol);
    for (let pin = freePin(piece); pin !== undefined; pin = freePin(piece)) {
      piece.controls.buttons.push({ name: `button ${pin}`, pin, press: next });
      if (piece.controls.buttons.length > 8) break;
      expect(checkPiece(piece).diagnostics).toEqual(checkPiece(parasol).diagnostics);
    }
    expect(piece.controls.buttons.length).toBe(9);
  });
});

describe('B9 the consequence of a hold or a double press', () => {
  const gestures: Pick<Button, 'press' | 'hold' | 'double'>[] = [
    { press: next },
    { press: next, hold: next },
    { press: next, double: next },
    { press: next, hold: next, double: next },
  ];

  test.for(gestures)('is told as the engine reads the contact: %j', (set) => {
    const button: Button = { name: 'button', pin: 2, ...set };
    const { after, milliseconds } = pressDelay(button, times);
    // Down for 100 ms from millisecond 1 on; each level counts once the contact has been at rest.
    const [down, release] = [1, 101].map((ms) => ms + times.debounceMilliseconds);
    const reader = new ButtonReader(button, times);
    const acted: number[] = [];
    for (let ms = 1; ms < 2000; ms++) if (reader.step(ms <= 100) === 'press') acted.push(ms);
    expect(acted).toEqual([(after === 'down' ? down! : release!) + milliseconds]);
  });

  test('is said in words with the times that are set', () => {
    const button: Button = { name: 'button', pin: 2, press: next, hold: next, double: next };
    expect(consequenceWords(button, { holdMilliseconds: 700, doubleMilliseconds: 250 })).toBe(
      'With a double press set, a single press acts 250 ms after you let go. A hold acts after 700 ms.',
    );
    expect(consequenceWords({ name: 'button', pin: 2 }, times)).toBe('It does nothing yet.');
  });
});

test('every action has a choice of its own, looks by their names', () => {
  const choices = actionChoices(parasol.looks);
  for (const { key, action } of choices) expect(keyOfAction(action)).toBe(key);
  expect(new Set(choices.map(({ key }) => key)).size).toBe(choices.length);
  expect(choices.filter(({ action }) => action.do === 'go-to-look')).toHaveLength(parasol.looks.length);
});

describe('brightness', () => {
  test('in percent and back is the same byte', () => {
    for (let byte = 0; byte < 256; byte++) expect(byteOf(percentOf(byte))).toBe(byte);
  });

  test('steps keep rising, each once, whatever is set', () => {
    expect(withStep([32, 64, 128, 255], 1, 200)).toEqual([32, 128, 200, 255]);
    expect(withStep([32, 64, 128, 255], 1, 128)).toEqual([32, 128, 255]);
    expect(withStep([32], 0, 0)).toEqual([1]);
    expect(addedStep([32, 64, 128, 255])).toEqual([32, 64, 128, 192, 255]);
    let steps: number[] | undefined = [255];
    for (let count = 1; count < 16; count++) {
      steps = addedStep(steps!);
      expect(steps).toHaveLength(count + 1);
    }
  });
});
