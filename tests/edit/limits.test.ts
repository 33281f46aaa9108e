/** Bounds of what edits may make, those that random edits seldom reach. */
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../engine/edit/apply.ts';
import type { Edit } from '../../engine/edit/edit.ts';
import { parseEdit } from '../../engine/edit/parse.ts';
import { perform } from '../../engine/edit/perform.ts';
import { limits } from '../../engine/piece/limits.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import { clip as clipSchema } from '../../engine/piece/schema/look.ts';
import type { Clip, Piece, Run } from '../../engine/piece/schema.ts';
import { pieceWith } from '../support/pieces.ts';
import { sound } from './pieces.ts';

const one: Run = pieceWith().lines[0]!.runs[0]!;
const run = (name: string): Run => ({ ...one, name, flat: { ...one.flat, count: 1 } as Run['flat'] });
const times = <T>(count: number, make: (i: number) => T): T[] =>
  Array.from({ length: count }, (_, i) => make(i));
const clip = (i: number): Clip =>
  clipSchema.parse({ pattern: 'still/1', startMilliseconds: i * 20, lengthMilliseconds: 20 });

describe('E14 lists that are full', () => {
  const cases: readonly (readonly [what: string, full: Piece, edit: Edit, path: string])[] = [
    [
      'runs',
      pieceWith({ lines: [{ pin: 6, part: 'ws2812b', runs: times(limits.runs, (i) => run(`run ${i}`)) }] }),
      { kind: 'add-run', line: 0, index: 0, run: run('one more') },
      'lines[0].runs',
    ],
    [
      'zones',
      pieceWith({ zones: times(limits.zones, (i) => ({ name: `zone ${i}`, source: { kind: 'all' } })) }),
      { kind: 'add-zone', index: 0, zone: { name: 'one more', source: { kind: 'all' } } },
      'zones',
    ],
    [
      'patterns',
      pieceWith({ patterns: times(limits.patterns, (i) => ({ name: `pattern ${i}`, source: '' })) }),
      { kind: 'add-pattern', index: 0, pattern: { name: 'one more', source: '', parameters: [] } },
      'patterns',
    ],
    [
      'looks',
      pieceWith({
        looks: times(limits.looks, (i) => ({ name: `look ${i}`, lengthMilliseconds: 20, tracks: [] })),
      }),
      { kind: 'duplicate-look', look: 'look 3', name: 'one more' },
      'looks',
    ],
    [
      'tracks',
      pieceWith({
        looks: [
          {
            name: 'Dusk',
            lengthMilliseconds: 20,
            tracks: times(limits.tracksPerLook, () => ({ clips: [] })),
          },
        ],
      }),
      { kind: 'add-track', at: { look: 'Dusk', track: 0 }, track: { clips: [] } },
      'looks[0].tracks',
    ],
    [
      'clips',
      pieceWith({
        looks: [
          {
            name: 'Dusk',
            lengthMilliseconds: 30_000,
            tracks: [{ clips: times(limits.clips, clip) }, { clips: [] }],
          },
        ],
      }),
      { kind: 'add-clip', at: { look: 'Dusk', track: 1, clip: 0 }, clip: clip(0) },
      'looks',
    ],
    [
      'buttons',
      pieceWith({
        board: 'host',
        controls: { buttons: times(limits.buttons, (i) => ({ name: `button ${i}`, pin: 20 + i })) },
      }),
      { kind: 'add-button', index: 0, button: { name: 'one more', pin: 40 } },
      'controls.buttons',
    ],
  ];

  it.each(cases)('take no more %s', (_, full, edit, path) => {
    expect(checkPiece(full).value).toBeDefined();
    const { value, diagnostics } = applyEdit(full, edit);
    expect(value).toBeUndefined();
    expect(diagnostics.map((one) => one.path)).toEqual([path]);
    expect(checkPiece(sound(perform(full, edit)).piece).value).toBeUndefined();
  });
});

describe('E14 pieces that are full', () => {
  it('hold no more values than a file may, however they came in', () => {
    const keys = times(limits.keysPerParameter, (i) => ({
      atMilliseconds: i,
      value: 1,
      easing: 'linear' as const,
    }));
    const patterns = [
      {
        name: 'many',
        source: '',
        parameters: times(32, (i) => ({
          kind: 'number' as const,
          name: `p${i}`,
          label: 'P',
          min: 0,
          max: 2,
          default: 1,
        })),
      },
    ];
    const parameters = Object.fromEntries(times(32, (i) => [`p${i}`, { keys }]));
    let piece = pieceWith({
      patterns,
      looks: [{ name: 'Dusk', lengthMilliseconds: 1000, tracks: [{ clips: [] }] }],
    });
    const add = (i: number): Edit => ({
      kind: 'add-clip',
      at: { look: 'Dusk', track: 0, clip: 0 },
      clip: { ...clip(i), pattern: 'many', parameters },
    });
    for (let i = 0; ; i++) {
      const { value, diagnostics } = applyEdit(piece, add(i));
      if (value === undefined) {
        expect(diagnostics.map(({ code }) => code)).toEqual(['file-too-large']);
        expect(checkPiece(sound(perform(piece, sound(parseEdit(add(i))))).piece).value).toBeUndefined();
        break;
      }
      piece = value.piece;
    }
    expect(checkPiece(piece).value).toBeDefined();
    expect(piece.looks[0]!.tracks[0]!.clips.length).toBeGreaterThan(25);
  });
});

describe('E1 edits from outside', () => {
  const codeOf = (data: unknown) => parseEdit(data).diagnostics[0]?.code;

  it('are refused with a reason and the place of it, whatever they are', () => {
    for (const data of [null, 7, 'set-piece', [], {}, { kind: 'burn' }, { kind: '__proto__' }]) {
      expect(parseEdit(data).value).toBeUndefined();
      expect(codeOf(data)).toBeDefined();
    }
    const edit = {
      kind: 'set-clip',
      at: { look: 'Dusk', track: 0, clip: 0 },
      set: { opacity: 300, blend: 'screech' },
    };
    expect(parseEdit(edit).diagnostics.map(({ code, path }) => [code, path])).toEqual([
      ['out-of-range', 'edit.set.opacity'],
      ['unknown-word', 'edit.set.blend'],
    ]);
    expect(codeOf({ kind: 'set-piece', set: { nmae: 'Ebb' } })).toBe('unknown-key');
    expect(codeOf({ kind: 'together', name: 'Nothing', edits: [] })).toBe('wrong-length');
    expect(
      codeOf({ kind: 'together', name: 'Nested', edits: [{ kind: 'together', name: 'a', edits: [] }] }),
    ).toBe('unknown-word');
  });

  it('leave defaults as they are where they leave a field out', () => {
    const piece = pieceWith({ output: { startBrightness: 200, curve: 'lightness' } });
    const after = sound(applyEdit(piece, { kind: 'set-output', set: { startBrightness: 9 } })).piece;
    expect(after.output).toEqual({ startBrightness: 9, curve: 'lightness' });
  });

  it('that lead nowhere say what there is', () => {
    const piece = pieceWith();
    const reasons = (
      [
        { kind: 'remove-run', run: 'rial' },
        { kind: 'remove-track', at: { look: 'Dusk', track: 2 } },
        { kind: 'remove-clip', at: { look: 'Dsuk', track: 2, clip: 0 } },
        { kind: 'set-line', line: 1, set: { pin: 3 } },
        { kind: 'reorder-look', look: 'Dusk', to: 1 },
        { kind: 'add-zone', index: 5, zone: { name: 'far', source: { kind: 'all' } } },
      ] satisfies Edit[]
    ).map((edit) =>
      applyEdit(piece, edit)
        .diagnostics.map(({ message, advice }) => `${message} ${advice}`)
        .join(),
    );
    expect(reasons).toEqual([
      'There is no run "rial". Did you mean "rail"?',
      'The look "Dusk" has no track 3. Choose one that is there.',
      'There is no look "Dsuk". Did you mean "Dusk"?',
      'The piece has no line 2. Choose one that is there.',
      'The list has no place 2. Choose one that is there.',
      'The list has no place 6. Choose one that is there.',
    ]);
  });
});
