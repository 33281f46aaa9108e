/** The keys of a table: everything that a pointer can do to runs can be done by them. */
import type { KeyboardEvent } from 'react';
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Session } from '../../session/session.ts';
import type { Hand } from '../hand.ts';
import { runsInHand, takeRuns, toggleRun } from '../in-hand.ts';
import type { SurfaceView } from '../surface/context.ts';
import { runsOf } from '../surface/places.ts';
import { askToRemove, duplicateHeld, nudge, scaleBy, turnBy } from './actions.ts';

const arrows: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
};

const nudgeMillimetres = { plain: 1, shift: 10 } as const;
const turnDegrees = 15;
const scaleFactor = 1.05;
const pushPixels = 60;
const zoomFactor = 1.25;

/** By the character or name of the key, without Ctrl. Those that need something in hand do nothing without. */
const heldKeys: Readonly<Record<string, (session: Session, hand: Hand) => void>> = {
  '[': (session) => turnBy(session, turnDegrees),
  ']': (session) => turnBy(session, -turnDegrees),
  '{': (session) => turnBy(session, 1),
  '}': (session) => turnBy(session, -1),
  '>': (session) => scaleBy(session, scaleFactor),
  '<': (session) => scaleBy(session, 1 / scaleFactor),
  Delete: askToRemove,
  Backspace: askToRemove,
};

const viewKeys: Readonly<Record<string, (view: SurfaceView) => void>> = {
  '+': (view) => view.zoom(zoomFactor),
  '=': (view) => view.zoom(zoomFactor),
  '-': (view) => view.zoom(1 / zoomFactor),
  '0': (view) => view.fit(),
};

const commandKeys: Readonly<Record<string, (session: Session) => void>> = {
  a: takeAll,
  d: duplicateHeld,
};

function takeAll(session: Session): void {
  const piece = session.bench.get().open?.piece;
  if (piece !== undefined)
    takeRuns(
      session,
      runsOf(piece).map(({ name }) => name),
    );
}

/**
 * What a key does on the table.
 * @param run the run that is focused; undefined where the table itself is
 * @returns whether it did anything, so that the browser should not
 */
export function tableKey(
  event: KeyboardEvent,
  view: SurfaceView,
  session: Session,
  hand: Hand,
  run?: string,
): boolean {
  const { key } = event;
  // Where brackets need AltGr, it comes as Ctrl and Alt together, and is neither.
  const isCommand = (event.ctrlKey || event.metaKey) && !event.altKey;
  if (isCommand) {
    const arrow = arrows[key];
    if (arrow !== undefined) view.push({ x: -arrow.x * pushPixels, y: arrow.y * pushPixels });
    const command = commandKeys[key.toLowerCase()];
    command?.(session);
    return arrow !== undefined || command !== undefined;
  }
  if (event.altKey && !event.ctrlKey) return false;
  if (key === 'Escape') {
    // A tool is put away first, by the bench.
    if (hand.tool.get().kind !== 'pick' || runsInHand(session).length === 0) return false;
    takeRuns(session, []);
    return true;
  }
  if (run !== undefined && (key === 'Enter' || key === ' ')) {
    if (event.shiftKey) toggleRun(session, run);
    else takeRuns(session, [run]);
    return true;
  }
  const onView = viewKeys[key];
  if (onView !== undefined) {
    onView(view);
    return true;
  }
  const arrow = arrows[key];
  const onHeld = heldKeys[key];
  if (arrow === undefined && onHeld === undefined) return key === ' ';
  takeFocused(session, run);
  onHeld?.(session, hand);
  if (arrow === undefined) return true;
  if (runsInHand(session).length === 0) {
    view.push({ x: -arrow.x * pushPixels, y: arrow.y * pushPixels });
    return true;
  }
  const far = event.shiftKey ? nudgeMillimetres.shift : nudgeMillimetres.plain;
  nudge(session, { x: arrow.x * far, y: arrow.y * far });
  return true;
}

/** A key on a run is for that run, unless it is in hand with others. */
function takeFocused(session: Session, run: string | undefined): void {
  if (run !== undefined && !runsInHand(session).includes(run)) takeRuns(session, [run]);
}
