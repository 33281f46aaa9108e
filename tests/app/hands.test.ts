/** Contacts, edits, history, gradients: what the maker's hands do. Rules: app/web/SPEC.md. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { makeOwn, rewrite } from '../../app/web/compose/own-pattern.ts';
import { describeUniform } from '../../app/web/compose/uniform-dial.ts';
import { clipAddress, clipAt } from '../../app/web/session/clip-at.ts';
import { Contacts } from '../../app/web/session/contacts.ts';
import { fileStem } from '../../app/web/session/file-name.ts';
import { editWork, type Manner } from '../../app/web/session/hand.ts';
import {
  addStop,
  gradientLevels,
  mostStops,
  moveStop,
  removeStop,
} from '../../app/web/tag/colour/gradient.ts';
import { hexOf, oklchOf } from '../../app/web/tag/colour/oklch.ts';
import { niceStep } from '../../app/web/tag/steps.ts';
import { applyEdit } from '../../engine/edit/apply.ts';
import type { Edit } from '../../engine/edit/edit.ts';
import { nextSteps, redo, settle, startWork, undo, type Work } from '../../engine/edit/history.ts';
import { compilePattern } from '../../engine/pattern/compile.ts';
import { findLibraryPattern } from '../../engine/pattern/library.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import type { Piece } from '../../engine/piece/schema.ts';
import { samplePiece } from './browser/samples.ts';

const seed = 20_261;

describe('W3 contacts', () => {
  test('a tap of no length is drawn out, and so is the gap to the next', () => {
    const contacts = new Contacts();
    contacts.reset(20);
    contacts.press(0, 1000);
    contacts.release(0, 1000);
    contacts.press(0, 1001);
    contacts.release(0, 1001);
    expect(contacts.take(999, 300)).toEqual([
      { atMs: 1, button: 0, down: true },
      { atMs: 61, button: 0, down: false },
      { atMs: 121, button: 0, down: true },
      { atMs: 181, button: 0, down: false },
    ]);
  });

  test('real presses keep their times, across any slicing of time', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 8, maxLength: 40 }), (steps) => {
        const contacts = new Contacts();
        contacts.reset(20);
        contacts.press(0, 110);
        contacts.release(0, 290);
        contacts.press(1, 200);
        const seen: string[] = [];
        let at = 100;
        for (const step of [...steps, 400]) {
          for (const { atMs, button, down } of contacts.take(at, step))
            seen.push(`${at + atMs} ${button} ${down}`);
          at += step;
        }
        expect(seen).toEqual(['110 0 true', '200 1 true', '290 0 false']);
      }),
      { seed },
    );
  });

  test('a press during time that is not played stays as long as it was', () => {
    const contacts = new Contacts();
    contacts.reset(20);
    contacts.press(0, 100);
    contacts.release(0, 220);
    contacts.press(1, 300);
    contacts.skip(0, 750);
    expect(contacts.take(750, 250)).toEqual([
      { atMs: 1, button: 0, down: true },
      { atMs: 120, button: 0, down: false },
      { atMs: 200, button: 1, down: true },
    ]);
    contacts.release(1, 1100);
    contacts.skip(1000, 1000);
    expect(contacts.take(1000, 250)).toEqual([{ atMs: 100, button: 1, down: false }]);
  });

  test('W3 a press that was begun before the page was stuck is as long as it was', () => {
    const contacts = new Contacts();
    contacts.press(0, 95);
    expect(contacts.take(80, 20)).toEqual([{ atMs: 15, button: 0, down: true }]);
    contacts.release(0, 96);
    // Stuck from 100 to 900: 5 ms of the press are played, 55 are left.
    contacts.skip(100, 650);
    expect(contacts.take(650, 250)).toEqual([{ atMs: 55, button: 0, down: false }]);
  });

  test('a contact that is down already is not pressed again, nor released twice', () => {
    const contacts = new Contacts();
    contacts.press(0, 10);
    contacts.press(0, 15);
    contacts.release(0, 200);
    contacts.release(0, 210);
    expect(contacts.take(0, 400)).toHaveLength(2);
  });
});

/** The piece after an edit that is not refused. */
function edited(piece: Piece, edit: Edit): Piece {
  const { value, diagnostics } = applyEdit(piece, edit);
  expect(diagnostics).toEqual([]);
  return value!.piece;
}

describe('W6 edits', () => {
  const piece = samplePiece('jellyfish-parasol');
  const at = { look: 0, track: 0, clip: 0 };
  const address = clipAddress(piece, at);
  const opacity = (value: number): Edit => ({ kind: 'set-clip', at: address, set: { opacity: value } });
  const lowest = (value: number): Edit => ({
    kind: 'set-parameter',
    at: address,
    parameter: 'lowest',
    value,
  });

  /** The work after edits, none of them refused. */
  function workAfter(work: Work, manner: Manner, ...edits: Edit[]): Work {
    return edits.reduce((before, edit) => {
      const { value, diagnostics } = editWork(before, edit, manner);
      expect(diagnostics).toEqual([]);
      return value!;
    }, work);
  }

  test('give another piece and leave the first as it was', () => {
    const before = structuredClone(piece);
    const now = workAfter(startWork(piece), 'step', opacity(7), lowest(0.5)).piece;
    expect(clipAt(now, at)).toMatchObject({ opacity: 7, parameters: { lowest: 0.5 } });
    expect(piece).toEqual(before);
    expect(now.looks[1]).toBe(piece.looks[1]);
    expect(checkPiece(now).diagnostics).toEqual([]);
  });

  test('make a library pattern the own of the piece, each time under a free name', () => {
    const sleeper = { ...findLibraryPattern('sleeper/1')!, own: false };
    const once = edited(piece, makeOwn(piece, at, sleeper));
    const back = edited(once, { kind: 'set-clip', at: address, set: { pattern: 'sleeper/1' } });
    const twice = edited(back, makeOwn(back, at, sleeper));
    const names = twice.patterns.map(({ name }) => name);
    expect(names).toEqual([...piece.patterns.map(({ name }) => name), 'my sleeper', 'my sleeper 2']);
    expect(clipAt(twice, at)!.pattern).toBe('my sleeper 2');
    expect(checkPiece(twice).diagnostics).toEqual([]);
    const rewritten = edited(twice, rewrite('my sleeper', sleeper, { source: '// gone', parameters: [] }));
    expect(rewritten.patterns.find(({ name }) => name === 'my sleeper')).toMatchObject({
      source: '// gone',
      parameters: [],
    });
  });

  test('of one drag are one step, named, undone together and redone', () => {
    const dragged = workAfter(startWork(piece), 'drag', opacity(7), opacity(40), opacity(90));
    const work = workAfter(settle(dragged), 'drag', opacity(91));
    expect(nextSteps(work.history)).toEqual({ undo: 'Set opacity of Sleeper' });
    const once = undo(work).value!;
    expect(clipAt(once.piece, at)!.opacity).toBe(90);
    const twice = undo(once).value!;
    expect(twice.piece).toEqual(piece);
    expect(nextSteps(twice.history)).toEqual({ redo: 'Set opacity of Sleeper' });
    expect(redo(twice).value!.piece).toEqual(once.piece);
    expect(redo(redo(twice).value!).value!.piece).toEqual(work.piece);
  });

  test('of another thing begin another step, and one by itself ends a drag', () => {
    const dragged = workAfter(startWork(piece), 'drag', opacity(7), lowest(0.5), lowest(0.6));
    const work = workAfter(dragged, 'step', opacity(8));
    expect(work.history.done.map(({ name }) => name)).toEqual([
      'Set opacity of Sleeper',
      'Set lowest of Sleeper',
      'Set opacity of Sleeper',
    ]);
  });

  test('that lead back to where the hand began leave no step', () => {
    const work = settle(workAfter(startWork(piece), 'drag', opacity(7), opacity(clipAt(piece, at)!.opacity)));
    expect(nextSteps(work.history)).toEqual({});
  });

  test('while a drag is under way nothing is offered to be done again that it takes the place of', () => {
    const undone = undo(workAfter(startWork(piece), 'step', opacity(7))).value!;
    const work = workAfter(undone, 'drag', lowest(0.5));
    expect(nextSteps(work.history)).toEqual({ undo: 'Set lowest of Sleeper' });
    expect(redo(work).value!.piece).toBe(work.piece);
  });

  test('that are refused say why', () => {
    const { value, diagnostics } = editWork(startWork(piece), lowest(99), 'drag');
    expect(value).toBeUndefined();
    expect(diagnostics.map(({ code }) => code)).toEqual(['parameter-range']);
  });
});

describe('a dial for a new parameter', () => {
  const at = (source: string, name: string) => describeUniform(source, source.indexOf(name));

  test.each([
    ['uniform lowp float softEdge;', 'softEdge', { kind: 'number', label: 'Soft edge' }],
    ['uniform int steps;', 'steps', { kind: 'whole', label: 'Steps' }],
    ['uniform bool back_wards ;', 'back_wards', { kind: 'yes-no', label: 'Back wards' }],
    ['uniform float one, two;\nuniform vec3 dusk;', 'dusk', { kind: 'colour', label: 'Dusk' }],
    ['uniform float one, two;', 'two', { kind: 'number', label: 'Two' }],
  ])('%s', (source, name, expected) => {
    const described = at(source, name)!;
    expect(described).toMatchObject({ ...expected, name });
    const body = `${source}\nlowp vec3 light() { return vec3(0.5); }`;
    const others = ['one', 'two'].filter((other) => other !== name && source.includes(other));
    const known = [...others.map((other) => describeUniform(source, source.indexOf(other))!), described];
    expect(compilePattern(body, known).diagnostics.filter(({ severity }) => severity === 'error')).toEqual(
      [],
    );
  });

  test('nothing where none is declared', () => {
    expect(describeUniform('float glow;', 6)).toBeNull();
    expect(describeUniform('uniform vec2 way;', 13)).toBeNull();
  });
});

describe('gradients', () => {
  const piece = samplePiece('jellyfish-parasol');
  const millrace = clipAddress(piece, { look: 0, track: 1, clip: 0 });
  const colour = fc.integer({ min: 0, max: 0xffffff }).map((n) => `#${n.toString(16).padStart(6, '0')}`);
  const stops = fc
    .array(fc.record({ at: fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000), colour }), {
      minLength: 1,
      maxLength: mostStops - 1,
    })
    .map((list) => list.sort((a, b) => a.at - b.at));

  test('stay valid, whatever is moved, added or removed', () => {
    fc.assert(
      fc.property(stops, fc.nat(), fc.double({ min: -2, max: 2, noNaN: true }), (list, pick, to) => {
        const index = pick % list.length;
        const added = addStop(list);
        for (const changed of [moveStop(list, index, to), added.stops, removeStop(list, index)]) {
          const edit = { kind: 'set-parameter', at: millrace, parameter: 'water', value: changed } as const;
          expect(checkPiece(edited(piece, edit)).diagnostics).toEqual([]);
        }
        expect(added.stops).toHaveLength(list.length + 1);
      }),
      { seed },
    );
  });

  test('a new stop between two others does not change the gradient', () => {
    const { stops: more, index } = addStop([
      { at: 0, colour: '#000000' },
      { at: 1, colour: '#6480ff' },
    ]);
    expect(more[index]).toEqual({ at: 0.5, colour: '#324080' });
    const places = 257;
    const plain = gradientLevels([more[0]!, more[2]!], places);
    const stopped = gradientLevels(more, places);
    expect(Math.max(...stopped.map((level, at) => Math.abs(level - plain[at]!)))).toBeLessThanOrEqual(1);
  });

  test('the last stop stays', () => {
    const one = [{ at: 0.4, colour: '#ff8800' }];
    expect(removeStop(one, 0)).toEqual(one);
  });
});

describe('colours', () => {
  /** OKLCH of the sRGB primaries: CSS Color Module Level 4, sample conversions (from memory). */
  test.each([
    ['#ff0000', 0.628, 0.2577, 29.23],
    ['#00ff00', 0.8664, 0.2948, 142.5],
    ['#0000ff', 0.452, 0.3132, 264.05],
  ])('%s has its published lightness, chroma and hue', (hex, lightness, chroma, hue) => {
    const turned = oklchOf(hex);
    expect(turned.lightness).toBeCloseTo(lightness, 3);
    expect(turned.chroma).toBeCloseTo(chroma, 3);
    expect(turned.hue).toBeCloseTo(hue, 1);
    expect(hexOf(turned)).toBe(hex);
  });

  test('a colour that no pixel can show keeps its lightness and hue', () => {
    const asked = { lightness: 0.7, chroma: 0.33, hue: 200 };
    const got = oklchOf(hexOf(asked));
    expect(got.lightness).toBeCloseTo(asked.lightness, 2);
    expect(Math.abs(got.hue - asked.hue)).toBeLessThan(2);
    expect(got.chroma).toBeLessThan(asked.chroma);
  });

  test('grey keeps the hue that the hand had', () => {
    expect(oklchOf('#808080', 123).hue).toBe(123);
  });
});

test('dials step by round figures', () => {
  expect([0.95, 1, 7.75, 19.5, 59, 200].map(niceStep)).toEqual([0.005, 0.005, 0.02, 0.05, 0.2, 0.5]);
});

test('W13 a file is named after its piece, in letters that every file system takes', () => {
  expect(fileStem({ name: "Ferryman's hat" })).toBe('ferrymans-hat');
  expect(fileStem({ name: 'Été / fête?' })).toBe('ete-fete');
  expect(fileStem({ name: '///' })).toBe('piece');
});
