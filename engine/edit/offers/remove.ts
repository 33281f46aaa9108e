/**
 * Removals together with every use of what is removed, which alone are refused as `in-use`. Each use is
 * removed as well, or gets something else in its place.
 */
import type { Action, Button, Look, Piece } from '../../piece/schema.ts';
import { type Edit, together } from '../edit.ts';
import { sourceWithoutRun } from '../sources.ts';
import { editsOfClips } from './clips-where.ts';
import { playing } from './pattern.ts';

/** @param instead the zone or run on which its clips play then; without one they are removed */
export function removeZone(piece: Piece, zone: string, instead?: string): Edit {
  const clips = withoutZones(piece, [zone], instead);
  return together(`Remove zone ${zone}`, [...clips, { kind: 'remove-zone', zone }]);
}

/**
 * Also takes the run out of zones; a zone that consisted of nothing else is removed like the run itself.
 * @param instead the zone or run on which clips play then; without one they are removed
 */
export function removeRun(piece: Piece, run: string, instead?: string): Edit {
  const zones = piece.zones.map((zone) => ({ zone, source: sourceWithoutRun(zone.source, run) }));
  const gone = zones.filter(({ source }) => source === undefined).map(({ zone }) => zone.name);
  const edits = zones.flatMap(({ zone, source }): Edit[] => {
    if (source === undefined) return [{ kind: 'remove-zone', zone: zone.name }];
    return source === zone.source ? [] : [{ kind: 'set-zone', zone: zone.name, set: { source } }];
  });
  const clips = withoutZones(piece, [run, ...gone], instead);
  return together(`Remove run ${run}`, [...clips, ...edits, { kind: 'remove-run', run }]);
}

/** @param instead the pattern that its clips play then, with the parameters that both know; without one they are removed */
export function removePattern(piece: Piece, pattern: string, instead?: string): Edit {
  const clips = editsOfClips(
    piece,
    (clip) => clip.pattern === pattern,
    (at, clip) => (instead === undefined ? { kind: 'remove-clip', at } : playing(piece, at, clip, instead)),
  );
  return together(`Remove pattern ${pattern}`, [...clips, { kind: 'remove-pattern', pattern }]);
}

/** @param instead the look to which others and buttons lead then; without one timers lead to the next look, and buttons nowhere */
export function removeLook(piece: Piece, look: string, instead?: string): Edit {
  const timers = piece.looks
    .filter(({ name, moveOn }) => name !== look && moveOn?.to === look)
    .map(
      ({ name, moveOn }): Edit => ({ kind: 'set-look', look: name, set: { moveOn: led(moveOn!, instead) } }),
    );
  const buttons = piece.controls.buttons.flatMap((button) => buttonWithoutLook(button, look, instead));
  return together(`Remove look ${look}`, [...timers, ...buttons, { kind: 'remove-look', look }]);
}

function withoutZones(piece: Piece, zones: readonly string[], instead: string | undefined): Edit[] {
  return editsOfClips(
    piece,
    (clip) => zones.includes(clip.zone),
    (at) =>
      instead === undefined ? { kind: 'remove-clip', at } : { kind: 'set-clip', at, set: { zone: instead } },
  );
}

type MoveOn = NonNullable<Look['moveOn']>;

function led({ afterMilliseconds }: MoveOn, to: string | undefined): MoveOn {
  return to === undefined ? { afterMilliseconds } : { afterMilliseconds, to };
}

const gestures = ['press', 'hold', 'double'] as const;

/** One edit for all gestures of the button that lead to the look, or none. */
function buttonWithoutLook(button: Button, look: string, instead: string | undefined): Edit[] {
  const action: Action | null = instead === undefined ? null : { do: 'go-to-look', look: instead };
  const leading = gestures.filter((gesture) => {
    const before = button[gesture];
    return before?.do === 'go-to-look' && before.look === look;
  });
  if (leading.length === 0) return [];
  const set = Object.fromEntries(leading.map((gesture) => [gesture, action]));
  return [{ kind: 'set-button', button: button.name, set }];
}
