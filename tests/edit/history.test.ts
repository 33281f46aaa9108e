/** Steps, drags and sliders: what undo takes back, and what it is called. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Edit } from '../../engine/edit/edit.ts';
import {
  bail,
  drag,
  mark,
  mostSteps,
  nextSteps,
  record,
  redo,
  settle,
  startWork,
  undo,
  type Work,
} from '../../engine/edit/history.ts';
import { parseHistory } from '../../engine/edit/history-file.ts';
import { Chance } from '../support/generate-piece.ts';
import { frozen, generated, sample, sound, textOf } from './pieces.ts';
import { randomEdit } from './random-edit.ts';

const parasol = frozen(sample('jellyfish-parasol'));
const start = startWork(parasol);
const clip = { look: 'Drift', track: 1, clip: 0 };

const period = (value: number): Edit => ({ kind: 'set-parameter', at: clip, parameter: 'period', value });
const opacity = (value: number): Edit => ({ kind: 'set-clip', at: clip, set: { opacity: value } });
const move = (x: number, y: number): Edit => ({ kind: 'move-runs', side: 'flat', runs: ['rim'], by: [x, y] });

const done = (work: Work, edit: Edit, manner?: 'step' | 'join') => sound(record(work, edit, manner));
const back = (work: Work) => sound(undo(work));
const forth = (work: Work) => sound(redo(work));
const names = (work: Work) => work.history.done.map(({ name }) => name);
const rim = ({ piece }: Work) => piece.lines[0]!.runs[0]!.flat;

describe('E6 steps', () => {
  it('have names in plain words, for what can be undone and redone', () => {
    const two = done(done(start, move(5, 0)), period(7));
    expect(names(two)).toEqual(['Move run rim', 'Set period of Millrace']);
    expect(nextSteps(two.history)).toEqual({ undo: 'Set period of Millrace' });
    expect(nextSteps(back(two).history)).toEqual({ undo: 'Move run rim', redo: 'Set period of Millrace' });
    expect(nextSteps(start.history)).toEqual({});
  });

  it('that were taken back are gone with the next edit, but not with one that changes nothing or is refused', () => {
    const one = back(done(start, period(7)));
    expect(nextSteps(done(one, period(6)).history).redo).toBe('Set period of Millrace');
    expect(record(one, period(-1)).value).toBeUndefined();
    expect(nextSteps(done(one, opacity(9)).history).redo).toBeUndefined();
  });

  it('end somewhere: nothing to undo, nothing to redo, the same piece', () => {
    expect(back(start).piece).toBe(parasol);
    expect(forth(start).piece).toBe(parasol);
  });

  it('are as many as anybody counts back, the oldest are forgotten', () => {
    let work = start;
    for (let i = 0; i <= mostSteps; i++) work = done(work, opacity(i % 255));
    expect(work.history.done.length).toBe(mostSteps);
    for (let i = 0; i < mostSteps; i++) work = back(work);
    expect(work.piece.looks[0]!.tracks[1]!.clips[0]!.opacity).toBe(0);
  });

  it('give each piece back exactly, where moving back would not', () => {
    const moved = done(start, move(0.1, 0.2));
    const there = done(done(moved, move(0.7, -3.3)), move(-0.7, 3.3));
    expect(rim(there)).not.toEqual(rim(moved));
    expect(textOf(back(back(there)).piece)).toBe(textOf(moved.piece));
  });
});

describe('E7 sliders', () => {
  it('make one step of edits that follow each other on the same value', () => {
    let work = done(start, period(7), 'join');
    for (const value of [8, 9, 10]) work = done(work, period(value), 'join');
    expect(names(work)).toEqual(['Set period of Millrace']);
    expect(textOf(back(work).piece)).toBe(textOf(parasol));
    expect(textOf(forth(back(work)).piece)).toBe(textOf(work.piece));
  });

  it('make another step for another value, after a rest, after undo, and after a plain edit', () => {
    const first = done(start, period(7), 'join');
    expect(names(done(first, opacity(3), 'join')).length).toBe(2);
    expect(names(done(settle(first), period(8), 'join')).length).toBe(2);
    expect(names(done(forth(back(first)), period(8), 'join')).length).toBe(2);
    expect(names(done(done(start, period(7)), period(8), 'join')).length).toBe(2);
  });

  it('let a name be typed letter by letter', () => {
    let work = start;
    for (const [from, to] of [
      ['tips', 'tip'],
      ['tip', 'ti'],
      ['ti', 'tide line'],
    ] as const) {
      work = done(work, { kind: 'rename-zone', zone: from, name: to }, 'join');
    }
    expect(work.history.done.length).toBe(1);
    expect(textOf(back(work).piece)).toBe(textOf(parasol));
  });
});

describe('E8 drags', () => {
  it('are one step of the name of their mark, whatever happens between', () => {
    let work = mark(start, 'Move run rim');
    for (let i = 0; i < 50; i++) work = done(work, move(1, 0.1));
    work = done(done(work, opacity(7)), period(9));
    expect(nextSteps(work.history)).toEqual({ undo: 'Move run rim' });
    work = settle(work);
    expect(names(work)).toEqual(['Move run rim']);
    expect(textOf(back(work).piece)).toBe(textOf(parasol));
    expect(textOf(forth(back(work)).piece)).toBe(textOf(work.piece));
  });

  it('do not grow with their way', () => {
    let work = mark(start, 'Move run rim');
    work = done(work, move(1, 0));
    const short = textOf(work.history).length;
    for (let i = 0; i < 500; i++) work = done(work, move(1, 0));
    expect(textOf(work.history).length).toBe(short);

    const spare: Edit = { kind: 'add-track', at: { look: 'Drift', track: 3 }, track: { clips: [] } };
    const before = done(start, spare);
    work = mark(before, 'Move Wake');
    for (let i = 0; i < 40; i++) {
      const at = { look: 'Drift', track: 2 + (i % 2), clip: 0 };
      const to = { look: 'Drift', track: 3 - (i % 2), clip: 0 };
      work = done(work, { kind: 'move-clip', at, to, startMilliseconds: 100 * i });
    }
    expect(work.history.drag!.back!.kind).toBe('move-clip');
    expect(textOf(sound(bail(work)).piece)).toBe(textOf(before.piece));
  });

  it('that are given up leave nothing, and what was undone before can still be redone', () => {
    const before = back(done(start, opacity(9)));
    const work = done(done(mark(before, 'Move run rim'), move(3, 4)), period(9));
    const given = sound(bail(work));
    expect(textOf(given.piece)).toBe(textOf(parasol));
    expect(given.history).toEqual(before.history);
    expect(sound(bail(start))).toEqual(start);
  });

  it('that lead back to where they began leave no step', () => {
    const before = back(done(start, opacity(9)));
    const there = settle(sound(drag(done(mark(before, 'Move'), move(3, 4)), move(0, 0))));
    expect(there.history).toEqual(before.history);
    const around = settle(done(done(mark(before, 'Set'), opacity(3)), opacity(255)));
    expect(around.history).toEqual(before.history);
  });

  it('follow the hand from the mark, so that errors do not gather and nothing is lost on the way', () => {
    const keyed = { look: 'Bell stroke', track: 1, clip: 0 };
    const trim = (startMilliseconds: number): Edit => ({
      kind: 'trim-clip',
      at: keyed,
      startMilliseconds,
      lengthMilliseconds: 20_000 - startMilliseconds,
    });
    let work = mark(start, 'Trim');
    for (const ms of [4000, 12_000, 19_000, 5, 4000]) work = sound(drag(work, trim(ms)));
    expect(textOf(work.piece)).toBe(textOf(done(start, trim(4000)).piece));
    work = sound(drag(work, trim(0)));
    expect(textOf(work.piece)).toBe(textOf(parasol));
  });

  it('stay where they were when the hand goes where it cannot', () => {
    const work = sound(drag(mark(start, 'Set'), opacity(200)));
    expect(drag(work, opacity(256)).value).toBeUndefined();
    expect(settle(work).piece.looks[0]!.tracks[1]!.clips[0]!.opacity).toBe(200);
  });

  it('end where undo is asked for, and are what it takes back', () => {
    const work = back(done(mark(done(start, opacity(9)), 'Move run rim'), move(3, 4)));
    expect(nextSteps(work.history)).toMatchObject({ redo: 'Move run rim' });
    expect(names(work)).toEqual(['Set opacity of Millrace']);
  });
});

describe('E9 histories', () => {
  const operations = fc.array(fc.tuple(fc.nat({ max: 11 }), fc.nat({ max: 0x7fffffff })), {
    minLength: 20,
    maxLength: 120,
  });

  it('agree with a pile of copies of the piece, in any order of edits, drags, undo and redo', () => {
    fc.assert(
      fc.property(fc.nat({ max: 5000 }), operations, (pieceSeed, sequence) => {
        let work = startWork(frozen(generated(pieceSeed)));
        const pile = new Pile(textOf(work.piece));
        for (const [choice, seed] of sequence) {
          const edit = randomEdit(new Chance(seed), work.piece);
          const act = acts[choice] ?? acts[0]!;
          work = act(work, edit, pile);
          expect(textOf(work.piece), act.name).toBe(pile.now);
          expect(work.history.done.length, act.name).toBe(pile.before.length);
          expect(work.history.undone.length, act.name).toBe(pile.after.length);
        }
        work = settle(work);
        pile.settle();
        while (work.history.done.length > 0) {
          work = back(work);
          pile.undo();
          expect(textOf(work.piece)).toBe(pile.now);
        }
      }),
      { seed: 20260623, numRuns: 150 },
    );
  });

  it('outlive a trip through a file, at any moment', () => {
    fc.assert(
      fc.property(fc.nat({ max: 5000 }), operations, (pieceSeed, sequence) => {
        let work = startWork(generated(pieceSeed));
        const pile = new Pile(textOf(work.piece));
        for (const [choice, seed] of sequence) {
          work = (acts[choice] ?? acts[0]!)(work, randomEdit(new Chance(seed), work.piece), pile);
          const history = sound(parseHistory(JSON.parse(JSON.stringify(work.history))));
          expect(textOf(history)).toBe(textOf(work.history));
          work = { ...work, history };
        }
        expect(textOf(work.piece)).toBe(pile.now);
      }),
      { seed: 20260624, numRuns: 20 },
    );
  });

  it('from another piece, or damaged, are refused without an error being thrown', () => {
    const step = { name: 'Step', edit: { kind: 'rename-zone', zone: 'nowhere', name: 'here' } };
    const strange = sound(parseHistory({ done: [step], undone: [], drag: null, growing: false }));
    expect(undo({ piece: parasol, history: strange }).diagnostics[0]!.code).toBe('zone-unknown');
    expect(parseHistory({ done: [{ ...step, edit: { kind: 'burn' } }] }).value).toBeUndefined();
    expect(parseHistory(null).value).toBeUndefined();
  });
});

/** The same history by copies: what a step looked like before, and what it looks like after. */
class Pile {
  before: string[] = [];
  after: string[] = [];
  marked: string | null = null;

  constructor(public now: string) {}

  change(text: string): void {
    if (text === this.now) return;
    if (this.marked === null) {
      this.before.push(this.now);
      this.after = [];
    }
    this.now = text;
  }

  settle(): void {
    if (this.marked !== null && this.marked !== this.now) {
      this.before.push(this.marked);
      this.after = [];
    }
    this.marked = null;
  }

  bail(): void {
    this.now = this.marked ?? this.now;
    this.marked = null;
  }

  undo(): void {
    this.settle();
    const text = this.before.pop();
    if (text === undefined) return;
    this.after.push(this.now);
    this.now = text;
  }

  redo(): void {
    this.settle();
    const text = this.after.pop();
    if (text === undefined) return;
    this.before.push(this.now);
    this.now = text;
  }
}

type Act = (work: Work, edit: Edit, pile: Pile) => Work;

/** Edits are the most frequent: choices beyond the list are edits too. */
const acts: readonly Act[] = [
  function edits(work, edit, pile) {
    const next = record(work, edit).value ?? work;
    pile.change(textOf(next.piece));
    return next;
  },
  function marks(work, _, pile) {
    pile.settle();
    pile.marked = pile.now;
    return mark(work, 'Drag');
  },
  function settles(work, _, pile) {
    pile.settle();
    return settle(work);
  },
  function bails(work, _, pile) {
    pile.bail();
    return sound(bail(work));
  },
  function undoes(work, _, pile) {
    pile.undo();
    return back(work);
  },
  function redoes(work, _, pile) {
    pile.redo();
    return forth(work);
  },
];
