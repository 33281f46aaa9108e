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
    { keys: ['↑', '↓'], does: 'on the shuttle: one frame back and on; Page keys: a second' },
    { keys: ['Home', 'End'], does: 'on the shuttle: to the beginning, to the end' },
    { keys: ['←', '→'], does: 'on a dial: a little less, a little more; with Page keys: much' },
    { keys: ['Enter'], does: 'on a swatch: lay it; on a clip: take it in hand' },
  ],
  firmware: [{ keys: ['F1'], does: 'in the sketch: everything that the editor can do' }],
};
