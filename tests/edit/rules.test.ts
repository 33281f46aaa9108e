/** Each rule between parts of a piece, broken by an edit of either part: found as a full check finds it. */
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../engine/edit/apply.ts';
import type { Edit, SingleEdit } from '../../engine/edit/edit.ts';
import { parseEdit } from '../../engine/edit/parse.ts';
import { perform } from '../../engine/edit/perform.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import type { ParameterDescription } from '../../engine/piece/schema.ts';
import { pieceWith } from '../support/pieces.ts';
import { frozen, sound, textOf } from './pieces.ts';

const parameters: ParameterDescription[] = [
  { kind: 'number', name: 'pace', label: 'Pace', min: 0, max: 5, default: 1 },
];

/** One of everything, so that everything can be broken. */
const piece = frozen(
  pieceWith({
    board: 'host',
    zones: [
      { name: 'ends', source: { kind: 'range', run: 'rail', first: 6, last: 7 } },
      { name: 'evens', source: { kind: 'stepped', of: { kind: 'run', run: 'rail' }, every: 2 } },
    ],
    patterns: [{ name: 'reeds', source: '', parameters }],
    looks: [
      {
        name: 'Dusk',
        lengthMilliseconds: 1000,
        tracks: [
          {
            clips: [
              { pattern: 'reeds', zone: 'ends', lengthMilliseconds: 400, parameters: { pace: 4 } },
              { pattern: 'still/1', zone: 'evens', startMilliseconds: 500, lengthMilliseconds: 500 },
            ],
          },
        ],
      },
    ],
    controls: { buttons: [{ name: 'brooch', pin: 40, press: { do: 'next-look' } }] },
    supply: { limitMilliamps: 400, keepAliveMilliamps: 100 },
  }),
);

const at = { look: 'Dusk', track: 0, clip: 0 };
const all = [0, 1, 2, 3, 4, 5, 6, 7];
const run = piece.lines[0]!.runs[0]!;
const short = { ...run.flat, count: 7 } as typeof run.flat;
const also = (...edits: SingleEdit[]): Edit => ({ kind: 'together', name: 'Several', edits });

const cases: readonly (readonly [code: string, edit: Edit])[] = [
  [
    'look-unknown',
    { kind: 'set-button', button: 'brooch', set: { hold: { do: 'go-to-look', look: 'Dawn' } } },
  ],
  [
    'look-unknown',
    { kind: 'set-look', look: 'Dusk', set: { moveOn: { afterMilliseconds: 50, to: 'Dawn' } } },
  ],
  ['worn-count', { kind: 'set-run', run: 'rail', set: { worn: short } }],
  ['position-outside', { kind: 'set-run', run: 'rail', set: { flat: short } }],
  ['position-outside', { kind: 'set-run', run: 'rail', set: { removed: [8] } }],
  ['position-twice', { kind: 'set-run', run: 'rail', set: { removed: [2], hidden: [2] } }],
  ['no-pixels', { kind: 'set-run', run: 'rail', set: { hidden: all } }],
  ['no-pixels', { kind: 'set-run', run: 'rail', set: { removed: all } }],
  ['zone-empty', { kind: 'set-run', run: 'rail', set: { removed: [6, 7] } }],
  ['run-unknown', { kind: 'set-zone', zone: 'ends', set: { source: { kind: 'run', run: 'mast' } } }],
  [
    'zone-pixel-twice',
    {
      kind: 'set-zone',
      zone: 'ends',
      set: { source: { kind: 'union', of: [{ kind: 'all' }, { kind: 'all' }] } },
    },
  ],
  ['zone-unknown', also({ kind: 'remove-zone', zone: 'ends' }, { kind: 'set-piece', set: { name: 'Quay' } })],
  [
    'pattern-unknown',
    also({ kind: 'remove-pattern', pattern: 'reeds' }, { kind: 'set-piece', set: { name: 'Quay' } }),
  ],
  [
    'parameter-range',
    { kind: 'set-pattern', pattern: 'reeds', set: { parameters: [{ ...parameters[0]!, max: 3 } as never] } },
  ],
  ['parameter-unknown', { kind: 'set-pattern', pattern: 'reeds', set: { parameters: [] } }],
  [
    'name-twice',
    { kind: 'set-pattern', pattern: 'reeds', set: { parameters: [...parameters, ...parameters] } },
  ],
  ['pattern-too-long', { kind: 'set-pattern', pattern: 'reeds', set: { source: `//${'é'.repeat(4096)}` } }],
  ['pattern-name-reserved', { kind: 'rename-pattern', pattern: 'reeds', name: 'reeds/2' }],
  ['parameter-kind', { kind: 'set-parameter', at, parameter: 'pace', value: '#102030' }],
  ['clips-overlap', { kind: 'set-clip', at, set: { endless: true } }],
  ['clips-overlap', { kind: 'set-clip', at, set: { lengthMilliseconds: 501 } }],
  ['clip-outside-look', { kind: 'set-look', look: 'Dusk', set: { lengthMilliseconds: 999 } }],
  ['fade-too-long', { kind: 'set-clip', at, set: { fadeOutMilliseconds: 401 } }],
  ['pin-unknown', { kind: 'set-piece', set: { board: 'atmega328p' } }],
  ['pin-twice', { kind: 'set-line', line: 0, set: { pin: 40 } }],
  ['pin-twice', { kind: 'set-button', button: 'brooch', set: { pin: 6 } }],
  ['gesture-times', { kind: 'set-controls', set: { debounceMilliseconds: 250, holdMilliseconds: 100 } }],
  ['balance-length', { kind: 'set-output', set: { balance: [1, 2, 3, 4] } }],
  ['keep-alive-too-high', { kind: 'set-supply', set: { limitMilliamps: 199 } }],
  ['keep-alive-too-high', { kind: 'set-supply', set: { keepAliveMilliamps: 201 } }],
];

describe('E1 rules between parts', () => {
  it('hold before', () => {
    expect(checkPiece(piece).value).toEqual(piece);
  });

  it.each(cases)('%s: %j', (code, edit) => {
    const { value, diagnostics } = applyEdit(piece, edit);
    expect(value).toBeUndefined();
    expect(new Set(diagnostics.map((one) => one.code))).toEqual(new Set([code]));
    // Without the warnings of the whole piece, the full check of what the edit would make says just the same.
    const made = sound(perform(piece, sound(parseEdit(edit)))).piece;
    const full = checkPiece(made).diagnostics.filter(({ severity }) => severity === 'error');
    expect(textOf(diagnostics)).toBe(textOf(full));
  });

  it('may be broken for a moment among edits that are done together', () => {
    const swap = also(
      { kind: 'set-line', line: 0, set: { pin: 40 } },
      { kind: 'set-button', button: 'brooch', set: { pin: 6 } },
    );
    expect(sound(applyEdit(piece, swap)).piece.lines[0]!.pin).toBe(40);
    const shorter = also(
      { kind: 'set-run', run: 'rail', set: { flat: short } },
      { kind: 'set-zone', zone: 'ends', set: { source: { kind: 'range', run: 'rail', first: 5, last: 6 } } },
    );
    expect(applyEdit(piece, shorter).value).toBeDefined();
  });
});
