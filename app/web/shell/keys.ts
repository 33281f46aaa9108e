/** The keys of the page and of each bench, as they are told to whoever presses "?". */
import type { BenchName } from './benches.ts';

export interface KeyLine {
  readonly keys: readonly string[];
  readonly does: string;
}

export const everywhere: readonly KeyLine[] = [
  { keys: ['1', '2', '…'], does: 'press the buttons of the piece; hold to hold' },
  { keys: ['Ctrl Z', 'Ctrl Y'], does: 'take a step back, take it again' },
  { keys: ['Ctrl S'], does: 'save' },
  { keys: ['L'], does: 'large picture; Escape comes back' },
  { keys: ['P'], does: 'pause and play' },
  { keys: ['Tab'], does: 'go from one thing to the next; arrows turn what is reached' },
  { keys: ['Escape'], does: 'let go, or close what is open' },
  { keys: ['?'], does: 'show these keys' },
];

export const benchKeys: Record<BenchName, readonly KeyLine[]> = {
  place: [
    { keys: ['Enter'], does: 'take the run that is reached in hand; with Shift one more' },
    { keys: ['←', '→', '↑', '↓'], does: 'move it by 1 mm, with Shift by 10; with nothing in hand the table' },
    { keys: ['[', ']'], does: 'turn it by 15 degrees, with Shift by 1' },
    { keys: ['<', '>'], does: 'make it smaller, larger' },
    { keys: ['Ctrl D'], does: 'duplicate it' },
    { keys: ['Delete'], does: 'remove it' },
    { keys: ['Ctrl A'], does: 'take all runs in hand' },
    { keys: ['+', '−', '0'], does: 'nearer, farther, all of it' },
  ],
  compose: [
    { keys: ['↑', '↓'], does: 'on a clip: move it; with Alt its end, with Alt and Shift its start' },
    { keys: ['←', '→'], does: 'on a clip: to the track beside; on a dial: a little less, a little more' },
    { keys: ['Page ↑', 'Page ↓'], does: 'the same in larger steps' },
    { keys: ['I', 'O'], does: 'longer fades, in and out; with Shift shorter' },
    { keys: ['S'], does: 'split it at the shuttle' },
    { keys: ['Ctrl D', 'Ctrl C', 'Ctrl X'], does: 'lay it once more, copy it, cut it out' },
    { keys: ['Delete'], does: 'remove it' },
    { keys: [',', '.'], does: 'walk along its pixels' },
    { keys: ['↑', '↓', 'Home', 'End'], does: 'on the shuttle: seek a moment' },
  ],
  firmware: [{ keys: ['F1'], does: 'in the sketch: everything that the editor can do' }],
};
