/** The keys of a table, told on demand: whatever the pointer does, keys do as well. */
import { Ask } from '../shell/Ask.tsx';

const keys: readonly (readonly [string, string])[] = [
  ['Tab', 'from run to run'],
  ['Enter', 'take it in hand; with Shift one more'],
  ['Arrows', 'move by 1 mm; with Shift by 10 mm'],
  ['[ ]', 'turn by 15°; with Shift by 1°'],
  ['< >', 'smaller, larger'],
  ['Ctrl D, Delete', 'duplicate, remove'],
  ['Ctrl A, Esc', 'take all, let go'],
  ['+ − 0', 'zoom in, zoom out, show all'],
  ['Ctrl arrows', 'move the table'],
  ['Alt', 'while dragging: nothing snaps'],
  ['Space', 'while dragging: moves the table'],
];

export function TableHelp() {
  return (
    <Ask about="keys on the table" question="Keys on the table">
      <span className="key-list">
        {keys.map(([key, what]) => (
          <span key={key} className="key-row">
            <kbd>{key}</kbd> <span>{what}</span>
          </span>
        ))}
      </span>
    </Ask>
  );
}
