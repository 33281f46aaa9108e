/** What holds for every kind of edit, in random sequences over random pieces. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit } from '../../engine/edit/apply.ts';
import { type EditKind, editKinds } from '../../engine/edit/edit.ts';
import { record, redo, startWork, undo, type Work } from '../../engine/edit/history.ts';
import { refusalOfRemoval } from '../../engine/edit/in-use.ts';
import { given } from '../../engine/edit/outcome.ts';
import { parseEdit } from '../../engine/edit/parse.ts';
import { perform } from '../../engine/edit/perform.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import type { Piece } from '../../engine/piece/schema.ts';
import { Chance } from '../support/generate-piece.ts';
import { frozen, generated, sound, textOf } from './pieces.ts';
import { randomEdit } from './random-edit.ts';

const seed = 20260621;
const seeds = fc.nat({ max: 0x7fffffff });

/** One edit after the other, each drawn for the piece as it is by then; the refused ones change nothing. */
function walk(
  pieceSeed: number,
  editSeeds: readonly number[],
  visit: (piece: Piece, ...drawn: [ReturnType<typeof randomEdit>]) => Piece,
): void {
  let piece = frozen(generated(pieceSeed));
  for (const editSeed of editSeeds) piece = frozen(visit(piece, randomEdit(new Chance(editSeed), piece)));
}

describe('E1 applying', () => {
  it('takes an edit just when checkPiece takes the piece that it makes, and gives that very piece', () => {
    const taken = new Map<EditKind, number>(editKinds.map((kind) => [kind, 0]));
    let refusals = 0;
    fc.assert(
      fc.property(seeds, fc.array(seeds, { minLength: 30, maxLength: 60 }), (pieceSeed, editSeeds) =>
        walk(pieceSeed, editSeeds, (piece, edit) => {
          const { value: applied, diagnostics } = applyEdit(piece, frozen(edit));
          const made = given(parseEdit(edit), (parsed) => perform(piece, parsed)).value;
          const checked = made && checkPiece(made.piece);
          const inUse = refusalOfRemoval(piece, edit) !== undefined;
          expect(applied !== undefined, JSON.stringify({ edit, diagnostics })).toBe(
            checked?.value !== undefined && !inUse,
          );
          if (applied === undefined) {
            refusals += 1;
            expect(diagnostics.length).toBeGreaterThan(0);
            const reasons = checked?.diagnostics.filter(({ severity }) => severity === 'error') ?? [];
            if (!inUse && made) expect(codes(diagnostics)).toEqual(codes(reasons));
            return piece;
          }
          taken.set(edit.kind, taken.get(edit.kind)! + 1);
          expect(textOf(applied.piece)).toBe(textOf(checked!.value));
          return applied.piece;
        }),
      ),
      { seed, numRuns: 120 },
    );
    expect([...taken].filter(([, count]) => count < 10)).toEqual([]);
    expect(refusals).toBeGreaterThan(200);
  });

  it('never writes into the piece or the edit that it gets, and shares what has not changed', () => {
    const piece = frozen(generated(7));
    const { piece: after } = sound(
      applyEdit(
        piece,
        frozen({ kind: 'set-look', look: piece.looks[0]!.name, set: { dissolveMilliseconds: 777 } }),
      ),
    );
    expect(after.lines).toBe(piece.lines);
    expect(after.zones).toBe(piece.zones);
    expect(after.looks[0]!.tracks).toBe(piece.looks[0]!.tracks);
    expect(after.looks.slice(1)).toEqual(piece.looks.slice(1));
    for (const [i, look] of piece.looks.entries()) if (i > 0) expect(after.looks[i]).toBe(look);
  });

  it('gives the very same piece for an edit that changes nothing', () => {
    const piece = generated(7);
    const { output, name } = piece;
    const same = sound(applyEdit(piece, { kind: 'set-output', set: { curve: output.curve } }));
    expect(same.piece).toBe(piece);
    expect(sound(applyEdit(piece, { kind: 'set-piece', set: { name } })).piece).toBe(piece);
    expect(sound(applyEdit(piece, { kind: 'set-piece', set: {} })).piece).toBe(piece);
  });
});

describe('E2 inverses', () => {
  it('lead back to the piece before, character by character, and their inverses forth again', () => {
    const inverted = new Set<EditKind>();
    fc.assert(
      fc.property(seeds, fc.array(seeds, { minLength: 10, maxLength: 40 }), (pieceSeed, editSeeds) =>
        walk(pieceSeed, editSeeds, (piece, edit) => {
          const applied = applyEdit(piece, edit).value;
          if (applied === undefined) return piece;
          const back = sound(applyEdit(frozen(applied.piece), frozen(applied.inverse)));
          expect(textOf(back.piece), JSON.stringify(edit)).toBe(textOf(piece));
          const forth = sound(applyEdit(back.piece, back.inverse));
          expect(textOf(forth.piece), JSON.stringify(edit)).toBe(textOf(applied.piece));
          const again = sound(applyEdit(forth.piece, forth.inverse));
          expect(textOf(again.piece), JSON.stringify(edit)).toBe(textOf(piece));
          inverted.add(edit.kind);
          return applied.piece;
        }),
      ),
      { seed, numRuns: 120 },
    );
    expect([...inverted].sort()).toEqual([...editKinds].sort());
  });

  it('are edits that outlive a trip through a file, as all edits do', () => {
    const saved = new Set<EditKind>();
    fc.assert(
      fc.property(seeds, fc.array(seeds, { minLength: 10, maxLength: 40 }), (pieceSeed, editSeeds) =>
        walk(pieceSeed, editSeeds, (piece, edit) => {
          const applied = applyEdit(piece, edit).value;
          if (applied === undefined) return piece;
          const { inverse } = applied;
          expect(sound(parseEdit(JSON.parse(JSON.stringify(edit))))).toStrictEqual(edit);
          saved.add(edit.kind);
          expect(textOf(sound(parseEdit(JSON.parse(JSON.stringify(inverse)))))).toBe(textOf(inverse));
          return applied.piece;
        }),
      ),
      { seed, numRuns: 60 },
    );
    expect([...saved].sort()).toEqual([...editKinds].sort());
  });
});

describe('E3 sequences', () => {
  it('undone are the piece before, step by step, and redone the piece after', () => {
    const walked = new Set<EditKind>();
    fc.assert(
      fc.property(seeds, fc.array(seeds, { minLength: 20, maxLength: 80 }), (pieceSeed, editSeeds) => {
        let work: Work = startWork(generated(pieceSeed));
        const texts = [textOf(work.piece)];
        for (const editSeed of editSeeds) {
          const edit = randomEdit(new Chance(editSeed), work.piece);
          const next = record(work, edit).value;
          if (next === undefined || next === work) continue;
          work = next;
          walked.add(edit.kind);
          texts.push(textOf(work.piece));
        }
        for (const text of texts.slice(0, -1).reverse()) {
          work = sound(undo(work));
          expect(textOf(work.piece)).toBe(text);
          expect(checkPiece(work.piece).value).toBeDefined();
        }
        expect(work.history.done).toEqual([]);
        for (const text of texts.slice(1)) {
          work = sound(redo(work));
          expect(textOf(work.piece)).toBe(text);
        }
        expect(work.history.undone).toEqual([]);
      }),
      { seed, numRuns: 100 },
    );
    expect([...walked].sort()).toEqual([...editKinds].sort());
  });
});

/** Which reasons there are; the same one may be told at several places. */
function codes(diagnostics: readonly { readonly code: string }[]): string[] {
  return [...new Set(diagnostics.map(({ code }) => code))].sort();
}
