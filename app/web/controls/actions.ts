/** Actions as choices of one list: plain ones, and one for each look that a button can go to. */
import type { Action, Look } from '../../../engine/piece/schema.ts';

interface Choice {
  /** What the list gives back. */
  readonly key: string;
  readonly words: string;
  readonly action: Action;
}

const plain: readonly Choice[] = (
  [
    ['next-look', 'go to the next look'],
    ['previous-look', 'go to the look before'],
    ['brightness-step', 'one step brighter'],
    ['blackout', 'blackout, and back'],
    ['pause', 'pause, and go on'],
  ] as const
).map(([does, words]) => ({ key: does, words, action: { do: does } }));

/** No name of a look begins with it: names have no space in front. */
const goTo = ' ';

export function actionChoices(looks: readonly Pick<Look, 'name'>[]): Choice[] {
  const toLooks = looks.map(
    ({ name }): Choice => ({
      key: `${goTo}${name}`,
      words: `go to ${name}`,
      action: { do: 'go-to-look', look: name },
    }),
  );
  return [...plain, ...toLooks];
}

export const keyOfAction = (action: Action): string =>
  action.do === 'go-to-look' ? `${goTo}${action.look}` : action.do;
