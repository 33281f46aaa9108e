/** Random buttons, and what somebody does with them: presses around the times that matter, and bounce. */
import { contactChanges } from '../../../codegen/rehearse/bounce.ts';
import { ButtonReader, type Gesture } from '../../../engine/controls/button.ts';
import { type PressScript, parseScript } from '../../../engine/controls/press.ts';
import type { Action, Controls, Piece, PieceInput } from '../../../engine/piece/schema.ts';
import type { Chance } from './chance.ts';

type ControlsInput = NonNullable<PieceInput['controls']>;
type ButtonInput = NonNullable<ControlsInput['buttons']>[number];

const buttonNames = ['brooch', 'the pommel', 'Würfel ☾', 'up', 'end 3 down', 'tassel', '0', 'heel'];
const firstPin = 7;

export function generateControls(chance: Chance, lookNames: readonly string[]): ControlsInput {
  const debounceMilliseconds = chance.flip(0.6) ? 20 : chance.whole(1, 49);
  const holdMilliseconds = chance.flip(0.6) ? 600 : chance.whole(100, 1500);
  return {
    debounceMilliseconds,
    holdMilliseconds,
    doubleMilliseconds: chance.flip(0.6) ? 300 : chance.whole(50, 900),
    caughtMilliseconds: chance.flip(0.3) ? 8000 : chance.whole(1501, 4000),
    brightnessSteps: chance.list(chance.whole(1, 5), () => chance.whole(1, 255)),
    buttons: buttonNames
      .slice(0, chance.flip(0.2) ? buttonNames.length : chance.whole(1, 3))
      .map((name, index) => generateButton(chance, name, firstPin + index, lookNames)),
  };
}

function generateButton(
  chance: Chance,
  name: string,
  pin: number,
  lookNames: readonly string[],
): ButtonInput {
  const action = (): Action =>
    chance.pick<Action>([
      { do: 'next-look' },
      { do: 'previous-look' },
      { do: 'go-to-look', look: chance.pick(lookNames) },
      { do: 'brightness-step' },
      { do: 'blackout' },
      { do: 'pause' },
    ]);
  return {
    name,
    pin,
    ...(chance.flip(0.9) ? { press: action() } : {}),
    ...(chance.flip() ? { hold: action() } : {}),
    ...(chance.flip() ? { double: action() } : {}),
  };
}

/** A press script as text: some seconds of presses on all buttons, each contact chattering as it moves. */
export function generateScript(chance: Chance, { controls }: Piece): string {
  const { buttons } = controls;
  const presses = buttons.flatMap((_, button) => generatePresses(chance, controls, button));
  const seed = chance.whole(0, 0xffffffff);
  const steps = contactChanges(presses, seed).map(({ atMilliseconds, button, closed }) => ({
    ms: Math.floor(atMilliseconds),
    text: `${closed ? 'down' : 'up'} ${buttons[button]!.name}`,
  }));
  const last = steps.at(-1)?.ms ?? 0;
  return `${steps.map(({ ms, text }) => `${ms} ${text}\n`).join('')}${last + chance.whole(0, 2500)} end\n`;
}

function generatePresses(chance: Chance, controls: Controls, button: number) {
  const { debounceMilliseconds, holdMilliseconds, doubleMilliseconds, caughtMilliseconds } = controls;
  /** The time itself or a few milliseconds to either side, where one too many or too few would show. */
  const near = (ms: number) => Math.max(1, ms + chance.whole(-8, 8));
  let ms = chance.whole(0, 700);
  return chance.list(chance.whole(1, 6), () => {
    const lengthMilliseconds = chance.pick([
      () => near(debounceMilliseconds),
      () => near(holdMilliseconds),
      () => chance.whole(40, 200),
      () => chance.whole(40, 900),
      () => (chance.flip(0.3) ? near(caughtMilliseconds) : chance.whole(40, 200)),
    ])();
    const press = { atMilliseconds: ms, lengthMilliseconds, button };
    const gap = chance.pick([
      () => near(doubleMilliseconds),
      () => chance.whole(30, 250),
      () => chance.whole(300, 1500),
    ]);
    ms += lengthMilliseconds + gap();
    return press;
  });
}

/** The script as the engine reads it. */
export function scriptOf(text: string, piece: Piece): PressScript {
  const { value, diagnostics } = parseScript(text, piece);
  if (value === undefined) throw new Error(`${diagnostics[0]?.message} in: ${text}`);
  return value;
}

/** Which gestures the buttons of a piece make of a script. */
export function gesturesIn({ controls }: Piece, { contacts, endMs }: PressScript): Gesture[] {
  const readers = controls.buttons.map((button) => new ButtonReader(button, controls));
  const down = readers.map(() => false);
  const gestures: Gesture[] = [];
  let next = 0;
  for (let ms = 1; ms <= endMs; ms++) {
    for (; next < contacts.length && contacts[next]!.ms <= ms; next++) {
      down[contacts[next]!.button] = contacts[next]!.down;
    }
    for (const [index, reader] of readers.entries()) {
      const gesture = reader.step(down[index]!);
      if (gesture !== null) gestures.push(gesture);
    }
  }
  return gestures;
}
