/** What is done to the runs in hand, by pointer, key or button alike. Each is an edit through the session. */
import { applyEdit } from '../../../../engine/edit/apply.ts';
import { type Edit, together } from '../../../../engine/edit/edit.ts';
import type { Axis } from '../../../../engine/edit/kinds/runs.ts';
import { freeName } from '../../../../engine/edit/offers/free-name.ts';
import { removeRun } from '../../../../engine/edit/offers/remove.ts';
import { holdersOf, namesOf } from '../../../../engine/edit/references.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Piece, Run } from '../../../../engine/piece/schema.ts';
import type { Session } from '../../session/session.ts';
import type { Hand } from '../hand.ts';
import { runsInHand, takeRuns } from '../in-hand.ts';
import { boxAround, middleOf } from '../surface/box.ts';
import { placesOn, runsOf } from '../surface/places.ts';

interface Held {
  readonly piece: Piece;
  readonly runs: readonly Run[];
  readonly names: readonly [string, ...string[]];
  readonly middle: Point;
}

/** What is in hand, if anything is. */
export function heldBy(session: Session): Held | undefined {
  const piece = session.bench.get().open?.piece;
  const [first, ...others] = runsInHand(session);
  if (piece === undefined || first === undefined) return undefined;
  const names = [first, ...others] as const;
  const runs = runsOf(piece).filter(({ name }) => names.includes(name));
  return {
    piece,
    runs,
    names: [...names],
    middle: middleOf(boxAround(placesOn(runs, session.desk.side.get()))!),
  };
}

/** Moves what is in hand; moves that follow each other are one step until the hand rests. */
export function nudge(session: Session, by: Point): void {
  const held = heldBy(session);
  if (held === undefined) return;
  const side = session.desk.side.get();
  session.edit({ kind: 'move-runs', side, runs: [...held.names], by: [by.x, by.y] }, 'drag');
}

/** About the middle of what is in hand, counter-clockwise. */
export function turnBy(session: Session, degrees: number): void {
  const held = heldBy(session);
  if (held === undefined) return;
  const about: [number, number] = [held.middle.x, held.middle.y];
  const side = session.desk.side.get();
  session.edit({ kind: 'turn-runs', side, runs: [...held.names], about, degrees }, 'drag');
}

/** About the middle of what is in hand. Pixels move apart: the pitch grows along. */
export function scaleBy(session: Session, factor: number): void {
  const held = heldBy(session);
  if (held === undefined) return;
  const about: [number, number] = [held.middle.x, held.middle.y];
  const side = session.desk.side.get();
  session.edit({ kind: 'scale-runs', side, runs: [...held.names], about, factor }, 'drag');
}

/** How far from the run it was made of a duplicate lies. */
const aside: [number, number] = [20, -20];

/** The duplicates lie a little aside, and are in hand. */
export function duplicateHeld(session: Session): void {
  const held = heldBy(session);
  if (held === undefined) return;
  const taken = [...namesOf(held.piece, 'zone')];
  const names = held.runs.map(({ name }) => {
    const free = freeName(name, taken);
    taken.push(free);
    return free;
  });
  const copies = held.runs.map((run, i): Edit => ({ kind: 'duplicate-run', run: run.name, name: names[i]! }));
  const worn = names.filter((_, i) => held.runs[i]!.worn !== undefined);
  const moves: Edit[] = [{ kind: 'move-runs', side: 'flat', runs: names, by: aside }];
  if (worn.length > 0) moves.push({ kind: 'move-runs', side: 'worn', runs: worn, by: aside });
  const [first] = held.names;
  const title = names.length === 1 ? `Duplicate run ${first}` : `Duplicate ${names.length} runs`;
  session.edit(together(title, [...copies, ...moves]));
  takeRuns(session, names);
}

/** Lines to mirror at, through the origin of the table. */
export const mirrorLines = {
  upright: { title: 'upright axis', axis: { through: [0, 0], degrees: 90 } },
  level: { title: 'level axis', axis: { through: [0, 0], degrees: 0 } },
} satisfies Record<string, { title: string; axis: Axis }>;
export type MirrorLine = keyof typeof mirrorLines;

/** Mirrors what is in hand about its own middle. */
export function flipHeld(session: Session, line: MirrorLine): void {
  const held = heldBy(session);
  if (held === undefined) return;
  const axis: Axis = { ...mirrorLines[line].axis, through: [held.middle.x, held.middle.y] };
  const side = session.desk.side.get();
  session.edit({ kind: 'mirror-runs', side, runs: [...held.names], axis });
}

/** Removes what nobody uses at once, and asks before the rest. */
export function askToRemove(session: Session, hand: Hand): void {
  const held = heldBy(session);
  if (held === undefined) return;
  const inUse = held.names.some((name) => holdersOf(held.piece, 'zone', name).length > 0);
  if (inUse) hand.asksToRemove.set(held.names);
  else removeHeld(session);
}

/** With every zone and clip that is left with nothing. */
export function removeHeld(session: Session): void {
  const held = heldBy(session);
  if (held === undefined) return;
  let piece = held.piece;
  const edits: Edit[] = [];
  for (const name of held.names) {
    const edit = removeRun(piece, name);
    edits.push(edit);
    // What cannot be done is tried as well, so that the maker is told why.
    piece = applyEdit(piece, edit).value?.piece ?? piece;
  }
  const title = edits.length === 1 ? `Remove run ${held.names[0]}` : `Remove ${edits.length} runs`;
  session.edit(together(title, edits));
}
