/** When the gestures of a button act, in words: what comes of giving it a hold or a double press. */
import type { Button, Controls } from '../../../engine/piece/schema.ts';

/** When a single press acts: so long after the button goes down, or after it is let go. */
export interface PressDelay {
  readonly after: 'down' | 'release';
  readonly milliseconds: number;
}

type Times = Pick<Controls, 'holdMilliseconds' | 'doubleMilliseconds'>;

/** Counted from the debounced contact, as `engine/controls/button.ts` reads it. */
export function pressDelay({ hold, double }: Button, { doubleMilliseconds }: Times): PressDelay {
  if (double !== undefined) return { after: 'release', milliseconds: doubleMilliseconds };
  return { after: hold === undefined ? 'down' : 'release', milliseconds: 0 };
}

/** A sentence or two; what a gesture does is told elsewhere. */
export function consequenceWords(button: Button, times: Times): string {
  const { press, hold, double } = button;
  if (press === undefined && hold === undefined && double === undefined) return 'It does nothing yet.';
  const { holdMilliseconds, doubleMilliseconds } = times;
  const sentences: string[] = [];
  if (press !== undefined) {
    const { after, milliseconds } = pressDelay(button, times);
    if (after === 'down') sentences.push('A press acts at once.');
    else if (milliseconds === 0) sentences.push('A press acts when you let go, as it could become a hold.');
    else sentences.push(`With a double press set, a single press acts ${milliseconds} ms after you let go.`);
  } else if (double !== undefined) {
    sentences.push(`The second press has to come within ${doubleMilliseconds} ms.`);
  }
  if (hold !== undefined) sentences.push(`A hold acts after ${holdMilliseconds} ms.`);
  return sentences.join(' ');
}
