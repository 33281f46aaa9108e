/** What steps are called. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Edit, editKinds, together } from '../../engine/edit/edit.ts';
import { titleOf } from '../../engine/edit/titles.ts';
import { Chance } from '../support/generate-piece.ts';
import { generated, sample } from './pieces.ts';
import { randomEdit } from './random-edit.ts';

const parasol = sample('jellyfish-parasol');
const at = { look: 'Drift', track: 1, clip: 0 };

const titles: readonly (readonly [Edit, string])[] = [
  [{ kind: 'move-runs', side: 'flat', runs: ['rim'], by: [1, 0] }, 'Move run rim'],
  [
    { kind: 'turn-runs', side: 'worn', runs: ['rim', 'tentacle 1'], about: [0, 0], degrees: 5 },
    'Turn 2 runs as worn',
  ],
  [{ kind: 'set-parameter', at, parameter: 'period', value: 3 }, 'Set period of Millrace'],
  [{ kind: 'set-parameter', at, parameter: 'period', value: null }, 'Reset period of Millrace'],
  [
    { kind: 'set-clip', at, set: { opacity: 3, blend: 'screen', seed: 4 } },
    'Set opacity, blend and seed of Millrace',
  ],
  [{ kind: 'split-clip', at, atMilliseconds: 9000 }, 'Split Millrace'],
  [{ kind: 'remove-clip', at: { ...at, look: 'Bell stroke' } }, 'Remove bell stroke'],
  [{ kind: 'remove-clip', at: { ...at, clip: 9 } }, 'Remove clip'],
  [
    { kind: 'set-track', at: { look: 'Drift', track: 2 }, set: { name: 'swell' } },
    'Rename track undertow to swell',
  ],
  [{ kind: 'set-look', look: 'Drift', set: { moveOn: null } }, 'Set move-on of look Drift'],
  [{ kind: 'set-piece', set: { name: 'Medusa' } }, 'Name the piece Medusa'],
  [{ kind: 'set-piece', set: { board: 'host' } }, 'Set board'],
  [{ kind: 'set-button', button: 'handle', set: { double: null } }, 'Set double press of button handle'],
  [{ kind: 'rename-zone', zone: 'tips', name: 'ends' }, 'Rename zone tips to ends'],
  [{ kind: 'set-supply', set: { limitMilliamps: 900, volts: 5 } }, 'Set limit and volts of the supply'],
  [
    { kind: 'together', name: 'Lay out the wings', edits: [{ kind: 'remove-clip', at }] },
    'Lay out the wings',
  ],
];

describe('E6 titles', () => {
  it.each(titles)('%j', (edit, title) => {
    expect(titleOf(edit, parasol)).toBe(title);
  });

  it('there is one for every kind of edit, short and without technical words', () => {
    const piece = generated(12);
    for (const kind of editKinds) {
      fc.assert(
        fc.property(fc.nat(), (seed) => {
          const title = titleOf(randomEdit(new Chance(seed), piece, kind), piece);
          expect(title).toMatch(/^[A-Z][^{}[\]]+$/);
          expect(title).not.toMatch(/undefined|null|NaN|nothing|Milliseconds/);
          expect(title.length).toBeLessThan(100);
        }),
        { seed: 20260627, numRuns: 40 },
      );
    }
  });

  it('several edits as one take apart those that are several already', () => {
    const remove: Edit = { kind: 'remove-clip', at };
    expect(together('One', [remove])).toBe(remove);
    expect(together('Three', [remove, together('Two', [remove, remove])])).toEqual({
      kind: 'together',
      name: 'Three',
      edits: [remove, remove, remove],
    });
  });
});
