/** Gestures: their times leave room for each other. */
import type { Findings } from '../findings.ts';
import type { Piece } from '../schema.ts';
import { clipped } from '../wording.ts';

export function checkControls({ controls }: Piece, findings: Findings): void {
  const { debounceMilliseconds, holdMilliseconds, doubleMilliseconds, caughtMilliseconds } = controls;
  if (holdMilliseconds <= debounceMilliseconds) {
    const message = 'A hold would be over before the button has stopped bouncing.';
    const advice = `Choose more than the ${debounceMilliseconds} ms of "debounceMilliseconds".`;
    findings.error('gesture-times', 'controls.holdMilliseconds', message, advice);
  }
  if (doubleMilliseconds <= debounceMilliseconds) {
    const message = 'A second press would come too late before the button has stopped bouncing.';
    const advice = `Choose more than the ${debounceMilliseconds} ms of "debounceMilliseconds".`;
    findings.error('gesture-times', 'controls.doubleMilliseconds', message, advice);
  }
  if (caughtMilliseconds <= holdMilliseconds) {
    const message = 'A button would count as caught in a bag before a hold has acted.';
    const advice = `Choose more than the ${holdMilliseconds} ms of "holdMilliseconds".`;
    findings.error('gesture-times', 'controls.caughtMilliseconds', message, advice);
  }
  if (controls.brightnessSteps.some((step, i, steps) => i > 0 && step <= steps[i - 1]!)) {
    const message = 'The brightness steps do not rise, so that some of them are passed over.';
    findings.warning('steps-order', 'controls.brightnessSteps', message, 'Sort them, each once.');
  }
  for (const [i, { name, press, hold, double }] of controls.buttons.entries()) {
    if (press !== undefined || hold !== undefined || double !== undefined) continue;
    const message = `The button "${clipped(name)}" does nothing.`;
    findings.warning(
      'button-idle',
      `controls.buttons[${i}]`,
      message,
      'Give it a "press", "hold" or "double".',
    );
  }
}
