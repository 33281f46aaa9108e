/**
 * A push button as it is: the contact chatters before it rests.
 *
 * Source of the figures: J. Ganssle, A Guide to Debouncing (18 kinds of switches): bounces of 1.6 ms on
 * average and 6.2 ms at most, one outlier aside. Presses here chatter for anything up to that longest time.
 */

export interface Press {
  /** When the contact first closes. */
  readonly atMilliseconds: number;
  /** Until it first opens again. */
  readonly lengthMilliseconds: number;
  /** Index of the button in the piece; the first one if left out. */
  readonly button?: number;
}

export interface ContactChange {
  /** Since power-up, with fractions. */
  readonly atMilliseconds: number;
  readonly button: number;
  readonly closed: boolean;
}

const longestBounceMilliseconds = 6.2;
const longestChatterMilliseconds = 1.2;
const shortestChatterMilliseconds = 0.01;

/** Every opening and closing of the contacts, in order of time. The same seed chatters the same way. */
export function contactChanges(presses: readonly Press[], seed: number): ContactChange[] {
  const random = seededRandom(seed);
  const changes = presses.flatMap(({ atMilliseconds, lengthMilliseconds, button = 0 }) => {
    const longest = Math.min(longestBounceMilliseconds, lengthMilliseconds);
    const chatter = (from: number, closed: boolean) =>
      chatterTimes(from, random() * longest, random).map((at, i) => ({
        atMilliseconds: at,
        button,
        closed: i % 2 === 0 ? closed : !closed,
      }));
    return [...chatter(atMilliseconds, true), ...chatter(atMilliseconds + lengthMilliseconds, false)];
  });
  return changes.sort((a, b) => a.atMilliseconds - b.atMilliseconds);
}

/** An odd number of times, so that the contact ends up where it went. */
function chatterTimes(from: number, length: number, random: () => number): number[] {
  const times = [from];
  for (;;) {
    const gap = () =>
      shortestChatterMilliseconds + random() * (longestChatterMilliseconds - shortestChatterMilliseconds);
    const back = times.at(-1)! + gap();
    const again = back + gap();
    if (again > from + length) return times;
    times.push(back, again);
  }
}

/** Numbers from 0 up to 1 by a linear congruential generator (Knuth, TAOCP 2, 3.3.4, the 32 bit line). */
function seededRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
