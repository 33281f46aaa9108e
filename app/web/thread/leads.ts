/** Where buttons and timers lead along the thread, in few words for where each of them is drawn. */
import type { Piece } from '../../../engine/piece/schema.ts';
import { actionWords, duration } from '../session/words.ts';

export interface Leads {
  /** What leads on from a look to the next one, along the whole thread: `press`. */
  readonly onward: readonly string[];
  /** What leads back to the look before. */
  readonly back: readonly string[];
  /** For each look, its timer that leads to the next one: `after 1 min`. */
  readonly timers: readonly (string | null)[];
  /** For each look, what leads to it from anywhere: `hold ferrule`. */
  readonly into: readonly (readonly string[])[];
  /** Timers that lead past the next look. */
  readonly jumps: readonly Jump[];
  /** What comes behind the last look, and what buttons do apart from the thread. */
  readonly tail: readonly string[];
}

export interface Jump {
  readonly from: number;
  readonly to: number;
  readonly words: string;
}

const gestureWords = { press: 'press', hold: 'hold', double: 'twice' } as const;
const gestures = Object.keys(gestureWords) as (keyof typeof gestureWords)[];

export function leadsOf({ looks, controls }: Pick<Piece, 'looks' | 'controls'>): Leads {
  const done = controls.buttons.flatMap((button) =>
    gestures.flatMap((gesture) => {
      const action = button[gesture];
      const which = controls.buttons.length > 1 ? ` ${button.name}` : '';
      return action === undefined ? [] : [{ action, words: `${gestureWords[gesture]}${which}` }];
    }),
  );
  const wordsOf = (does: string) => done.filter(({ action }) => action.do === does).map(({ words }) => words);
  const several = looks.length > 1;
  const next = several ? wordsOf('next-look') : [];
  const previous = several ? wordsOf('previous-look') : [];
  const timers = looks.map(({ moveOn }, from) => {
    if (moveOn === undefined) return null;
    const named = looks.findIndex(({ name }) => name === moveOn.to);
    const to = named < 0 ? (from + 1) % looks.length : named;
    return { from, to, words: `after ${duration(moveOn.afterMilliseconds)}` };
  });
  const goesOn = (at: number) => timers[at]?.to === at + 1;
  return {
    onward: next,
    back: previous,
    timers: looks.map((_, at) => (goesOn(at) ? timers[at]!.words : null)),
    into: looks.map(({ name }) =>
      done
        .filter(({ action }) => action.do === 'go-to-look' && action.look === name)
        .map(({ words }) => words),
    ),
    jumps: timers.filter((timer) => timer !== null).filter(({ from }) => !goesOn(from)),
    tail: [
      ...next.slice(0, 1).map((words) => `${words}: ${looks[0]!.name} again`),
      ...done
        .filter(({ action }) => apart.has(action.do))
        .map(({ action, words }) => `${words}: ${actionWords(action)}`),
    ],
  };
}

/** What a button does without going along the thread. */
const apart = new Set(['brightness-step', 'blackout', 'pause']);
