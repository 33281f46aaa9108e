/**
 * A piece under work, and the steps that can be taken back. All of it is data: a work can be saved with its
 * history, and every function here gives a new one. Selection, zoom and playhead are no part of it.
 *
 * A step holds the edit that takes it back, and nothing else of the past. Taken back, it holds the inverse
 * of that edit instead, which does it again.
 */
import type { Checked } from '../diagnostic.ts';
import type { Piece } from '../piece/schema.ts';
import { applyEdit } from './apply.ts';
import type { Edit } from './edit.ts';
import { joined, merged } from './merge.ts';
import { found, given } from './outcome.ts';
import { titleOf } from './titles.ts';

export interface Step {
  /** In plain words, such as "Move run rim". */
  readonly name: string;
  /** Leads to the piece on the other side of the step. */
  readonly edit: Edit;
}

/** What a hand is about to do, from `mark` to `settle`. */
export interface Drag {
  readonly name: string;
  /** Leads back to the piece at the mark; null as long as nothing has changed. */
  readonly back: Edit | null;
}

export interface History {
  /** The last one comes first off. */
  readonly done: readonly Step[];
  readonly undone: readonly Step[];
  readonly drag: Drag | null;
  /** Whether the last step may go on growing: see `record`. */
  readonly growing: boolean;
}

export interface Work {
  readonly piece: Piece;
  readonly history: History;
}

/** More than anybody counts back, and little enough to keep. */
export const mostSteps = 200;

export function startWork(piece: Piece): Work {
  return { piece, history: { done: [], undone: [], drag: null, growing: false } };
}

/**
 * Edits the piece and remembers how to take that back. With errors nothing changes.
 * @param manner `join` for one of many edits of a slider or a text field: as long as they follow each other
 *   and write the same place, they are one step. Inside of a drag all edits are.
 */
export function record(work: Work, edit: Edit, manner: 'step' | 'join' = 'step'): Checked<Work> {
  return given(applyEdit(work.piece, edit), ({ piece, inverse }) => {
    if (piece === work.piece) return found(work);
    const { history } = work;
    if (history.drag !== null) {
      return found({ piece, history: { ...history, drag: further(history.drag, inverse) } });
    }
    const longer = manner === 'join' && history.growing ? grown(history.done.at(-1), inverse) : undefined;
    const step = longer ?? { name: titleOf(edit, work.piece), edit: inverse };
    const before = longer === undefined ? history.done : history.done.slice(0, -1);
    const next = { done: bounded([...before, step]), undone: [], drag: null, growing: manner === 'join' };
    return found({ piece, history: next });
  });
}

/** Takes back the last step, or the drag under way. Without any, the same work. */
export function undo(work: Work): Checked<Work> {
  const { piece, history } = settle(work);
  const step = history.done.at(-1);
  if (step === undefined) return found({ piece, history });
  return given(applyEdit(piece, step.edit), (applied) => {
    const undone = [...history.undone, { name: step.name, edit: applied.inverse }];
    return found({
      piece: applied.piece,
      history: { ...history, done: history.done.slice(0, -1), undone, growing: false },
    });
  });
}

/** Does again what was taken back last. Without any, the same work. */
export function redo(work: Work): Checked<Work> {
  const { piece, history } = settle(work);
  const step = history.undone.at(-1);
  if (step === undefined) return found({ piece, history });
  return given(applyEdit(piece, step.edit), (applied) => {
    const done = [...history.done, { name: step.name, edit: applied.inverse }];
    return found({
      piece: applied.piece,
      history: { ...history, done, undone: history.undone.slice(0, -1), growing: false },
    });
  });
}

/** Begins a drag: all edits up to `settle` are one step of this name. One that was under way ends. */
export function mark(work: Work, name: string): Work {
  const { piece, history } = settle(work);
  return { piece, history: { ...history, drag: { name, back: null }, growing: false } };
}

/**
 * The next moment of a drag, as an edit of the piece as it was at the mark: what the drag did before is taken
 * back first. So a shape follows the hand without gathering errors, and what a narrow place cut off comes
 * back when the hand does. With errors the drag stays where it was.
 */
export function drag(work: Work, edit: Edit): Checked<Work> {
  const { drag } = work.history;
  if (drag === null || drag.back === null) return record(work, edit);
  return given(applyEdit(work.piece, drag.back), ({ piece }) =>
    record({ piece, history: { ...work.history, drag: { ...drag, back: null } } }, edit),
  );
}

/** Ends a drag, or the growing of a step. A drag that has led back to where it began leaves no step. */
export function settle(work: Work): Work {
  const { piece, history } = work;
  const rested = { ...history, drag: null, growing: false };
  const { drag } = history;
  if (drag === null || drag.back === null) return { piece, history: rested };
  if (applyEdit(piece, drag.back).value?.piece === piece) return { piece, history: rested };
  const done = bounded([...history.done, { name: drag.name, edit: drag.back }]);
  return { piece, history: { ...rested, done, undone: [] } };
}

/** Gives up a drag: everything is as it was at the mark, also what can be done again. */
export function bail(work: Work): Checked<Work> {
  const { piece, history } = work;
  const rested = { ...history, drag: null };
  if (history.drag === null || history.drag.back === null) return found({ piece, history: rested });
  return given(applyEdit(piece, history.drag.back), (applied) =>
    found({ piece: applied.piece, history: rested }),
  );
}

/** What the menu says beside "Undo" and "Redo"; undefined where there is nothing. */
export function nextSteps({ done, undone, drag }: History): { undo?: string; redo?: string } {
  const names = {
    undo: drag?.back ? drag.name : done.at(-1)?.name,
    redo: drag?.back ? undefined : undone.at(-1)?.name,
  };
  return Object.fromEntries(Object.entries(names).filter(([, name]) => name !== undefined));
}

function bounded(steps: readonly Step[]): readonly Step[] {
  return steps.slice(-mostSteps);
}

function grown(step: Step | undefined, inverse: Edit): Step | undefined {
  const edit = step && merged(step.edit, inverse);
  return edit && { name: step.name, edit };
}

/** The way back from here: first what is newest, then the way that there was. */
function further({ name, back }: Drag, inverse: Edit): Drag {
  return { name, back: back === null ? inverse : joined(name, back, inverse) };
}
