/** Figures that a maker may change in the sketch, each with what it means and what it may be. */
import type { Plan } from './plan.ts';
import { alignComments } from './text.ts';

/** Settings, and in plain words what is wrong when an edit leaves their range. */
export function printSettings(plan: Plan): string {
  const { score, features } = plan;
  const { piece } = score;
  const { controls, output, supply } = piece;
  const [red, green, blue] = score.output.balance;
  const steps = controls.brightnessSteps.join(', ');
  const lines: (string | false)[] = [
    `constexpr uint16_t START_BRIGHTNESS = ${output.startBrightness};  // 0 (dark) to 255 (full)`,
    'constexpr uint8_t START_LOOK = 0;  // number of the look that it begins with, from 0',
    features.brightnessStep === true &&
      `static const uint8_t BRIGHTNESS_STEPS[] IN_FLASH = {${steps}};  // 1 to 255 each`,
    `constexpr uint16_t LIMIT_MILLIAMPS = ${supply.limitMilliamps};  // frames that would draw more are dimmed`,
    features.keepAlive === true &&
      `constexpr uint16_t KEEP_ALIVE_MILLIAMPS = ${supply.keepAliveMilliamps};  // frames that would draw less are lifted`,
    `constexpr uint8_t PIXEL_PIN = ${piece.lines[0]!.pin};  // where the data wire of the pixels is soldered`,
    `constexpr uint16_t TICK_MS = ${piece.tickMilliseconds};  // a new frame this often, if the chip can`,
    features.balance === true && `constexpr uint16_t RED_BALANCE = ${red};  // 256: full`,
    features.balance === true && `constexpr uint16_t GREEN_BALANCE = ${green};`,
    features.balance === true && `constexpr uint16_t BLUE_BALANCE = ${blue};`,
    features.buttons === true &&
      `constexpr uint8_t DEBOUNCE_MS = ${controls.debounceMilliseconds};  // a contact counts once it is steady for this long`,
    features.gestures === true &&
      `constexpr uint16_t HOLD_MS = ${controls.holdMilliseconds};  // down for this long is a hold`,
    features.gestures === true &&
      `constexpr uint16_t DOUBLE_MS = ${controls.doubleMilliseconds};  // two presses within this time are a double press`,
    features.gestures === true &&
      `constexpr uint16_t CAUGHT_MS = ${controls.caughtMilliseconds};  // down for longer: caught in a bag, no gesture at all`,
    '',
    ...printSettingChecks(plan),
  ];
  return `${alignComments(lines.filter((line) => line !== false)).join('\n')}\n`;
}

function printSettingChecks({ features }: Plan): string[] {
  const checks: (string | false)[] = [
    'static_assert(START_BRIGHTNESS <= 255, "START_BRIGHTNESS goes from 0 (dark) to 255 (full).");',
    'static_assert(LIMIT_MILLIAMPS >= 1 && LIMIT_MILLIAMPS <= 20000, "LIMIT_MILLIAMPS goes from 1 to 20000.");',
    'static_assert(TICK_MS >= 5 && TICK_MS <= 1000, "TICK_MS goes from 5 to 1000.");',
    features.keepAlive === true &&
      'static_assert(KEEP_ALIVE_MILLIAMPS <= LIMIT_MILLIAMPS / 2, "KEEP_ALIVE_MILLIAMPS is at most half of LIMIT_MILLIAMPS.");',
    features.balance === true &&
      'static_assert(RED_BALANCE <= 256 && GREEN_BALANCE <= 256 && BLUE_BALANCE <= 256, "A balance goes from 0 to 256.");',
    features.buttons === true &&
      'static_assert(DEBOUNCE_MS >= 1 && DEBOUNCE_MS <= 250, "DEBOUNCE_MS goes from 1 to 250.");',
    features.gestures === true &&
      'static_assert(HOLD_MS >= 1 && DOUBLE_MS >= 1 && CAUGHT_MS <= 60000, "HOLD_MS and DOUBLE_MS are at least 1, CAUGHT_MS at most 60000.");',
  ];
  return checks.filter((check) => check !== false);
}
