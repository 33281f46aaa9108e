/** Figures that a maker may change in the sketch, each with what it means and what it may be. */
import type { Plan } from './plan.ts';
import { alignComments, lineWidth } from './text.ts';

/** Only what the piece has. Every value is as wide as any number a maker may type, so that the checks see it. */
export function printSettings({ score, features }: Plan): string {
  const { controls, output, supply, lines, tickMilliseconds } = score.piece;
  const [red, green, blue] = score.output.balance;
  const { buttons, gestures, balance, keepAlive, brightnessStep } = features;
  const settings = [
    setting('START_LOOK', 0, 'the look that it begins with: its number below'),
    setting('START_BRIGHTNESS', output.startBrightness, '0 (dark) to 255 (full)'),
    setting('LIMIT_MILLIAMPS', supply.limitMilliamps, 'frames that would draw more are dimmed'),
    ...(keepAlive
      ? [setting('KEEP_ALIVE_MILLIAMPS', supply.keepAliveMilliamps, 'frames that would draw less are lifted')]
      : []),
    setting('PIXEL_PIN', lines[0]!.pin, 'where the data wire of the pixels is soldered'),
    setting('TICK_MS', tickMilliseconds, 'a new frame this often, if the chip can'),
    ...(balance
      ? [
          setting('RED_BALANCE', red!, '256: full'),
          setting('GREEN_BALANCE', green!, '256: full'),
          setting('BLUE_BALANCE', blue!, '256: full'),
        ]
      : []),
    ...(buttons
      ? [
          setting(
            'DEBOUNCE_MS',
            controls.debounceMilliseconds,
            'a contact counts once it is steady for this long',
          ),
        ]
      : []),
    ...(gestures
      ? [
          setting('HOLD_MS', controls.holdMilliseconds, 'down for this long is a hold'),
          setting(
            'DOUBLE_MS',
            controls.doubleMilliseconds,
            'two presses within this time are a double press',
          ),
          setting(
            'CAUGHT_MS',
            controls.caughtMilliseconds,
            'down for longer: caught in a bag, no gesture at all',
          ),
        ]
      : []),
  ];
  const steps = controls.brightnessSteps.join(', ');
  const sections = [
    alignComments(settings),
    ...(brightnessStep
      ? [
          [
            '// What a brightness step steps through, 1 to 255 each.',
            `static const uint8_t BRIGHTNESS_STEPS[] IN_FLASH = {${steps}};`,
          ],
        ]
      : []),
    checks.filter(([feature]) => feature === '' || features[feature]).flatMap(([, text]) => text),
  ];
  return `${sections.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

const setting = (name: string, value: number, meaning: string) =>
  `constexpr uint16_t ${name} = ${value};  // ${meaning}`;

function check(condition: string, sentence: string): string[] {
  const line = `static_assert(${condition}, "${sentence}");`;
  return line.length <= lineWidth ? [line] : [`static_assert(${condition},`, `              "${sentence}");`];
}

/** By feature; the empty one is always there. */
const checks: readonly (readonly [feature: string, text: readonly string[]])[] = [
  ['', check('START_BRIGHTNESS <= 255', 'START_BRIGHTNESS goes from 0 (dark) to 255 (full).')],
  ['', check('LIMIT_MILLIAMPS >= 1 && LIMIT_MILLIAMPS <= 20000', 'LIMIT_MILLIAMPS goes from 1 to 20000.')],
  [
    'keepAlive',
    check(
      'KEEP_ALIVE_MILLIAMPS <= LIMIT_MILLIAMPS / 2',
      'KEEP_ALIVE_MILLIAMPS is at most half of LIMIT_MILLIAMPS.',
    ),
  ],
  ['', check('TICK_MS >= 5 && TICK_MS <= 1000', 'TICK_MS goes from 5 to 1000.')],
  [
    'balance',
    check(
      'RED_BALANCE <= 256 && GREEN_BALANCE <= 256 && BLUE_BALANCE <= 256',
      'A balance goes from 0 to 256.',
    ),
  ],
  ['buttons', check('DEBOUNCE_MS >= 1 && DEBOUNCE_MS <= 250', 'DEBOUNCE_MS goes from 1 to 250.')],
  ['gestures', check('HOLD_MS >= 1 && DOUBLE_MS >= 1', 'HOLD_MS and DOUBLE_MS are at least 1.')],
  ['gestures', check('CAUGHT_MS <= 60000', 'CAUGHT_MS is at most 60000.')],
];
