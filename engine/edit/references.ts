/** Names that stand in other places of the piece, and follow when what they name is renamed. */
import type { Action, Button, Clip, Look, Piece } from '../piece/schema.ts';
import { listed } from '../piece/wording.ts';
import { mapShared } from './lists.ts';
import { followRun } from './sources.ts';

/** Things of one pool have different names: a run is a zone as well, and may not be called like one. */
export type Pool = 'zone' | 'pattern' | 'look' | 'button';

/** What holds a reference. */
export interface Holder {
  readonly what: 'zone' | 'look' | 'button';
  readonly name: string;
}

type Follow = (name: string, holder: Holder) => string;

const followers: { readonly [Kind in Pool]: (piece: Piece, follow: Follow) => Piece } = {
  zone: (piece, follow) => ({
    ...piece,
    zones: mapShared(piece.zones, (zone) => {
      const holder: Holder = { what: 'zone', name: zone.name };
      const source = followRun(zone.source, (run) => follow(run, holder));
      return source === zone.source ? zone : { ...zone, source };
    }),
    looks: looksFollowing(piece.looks, 'zone', follow),
  }),

  pattern: (piece, follow) => ({ ...piece, looks: looksFollowing(piece.looks, 'pattern', follow) }),

  look: (piece, follow) => ({
    ...piece,
    looks: mapShared(piece.looks, (look) => {
      const { moveOn } = look;
      if (moveOn?.to === undefined) return look;
      const to = follow(moveOn.to, { what: 'look', name: look.name });
      return to === moveOn.to ? look : { ...look, moveOn: { ...moveOn, to } };
    }),
    controls: {
      ...piece.controls,
      buttons: mapShared(piece.controls.buttons, (button) => buttonFollowing(button, follow)),
    },
  }),

  button: (piece) => piece,
};

/** The piece with a name exchanged wherever it is referred to. */
export function renameReferences(piece: Piece, pool: Pool, from: string, to: string): Piece {
  return followers[pool](piece, (name) => (name === from ? to : name));
}

/** Each holder once, in the order of the file. */
export function holdersOf(piece: Piece, pool: Pool, name: string): readonly Holder[] {
  const holders = new Map<string, Holder>();
  followers[pool](piece, (other, holder) => {
    if (other === name) holders.set(`${holder.what} ${holder.name}`, holder);
    return other;
  });
  return [...holders.values()];
}

/** `the zone "petals" and the looks "Dusk", "Ebb"`. */
export function holdersInWords(holders: readonly Holder[]): string {
  return (['zone', 'look', 'button'] as const)
    .map((what) => ({ what, names: holders.filter((one) => one.what === what).map(({ name }) => name) }))
    .filter(({ names }) => names.length > 0)
    .map(({ what, names }) => `the ${what}${names.length > 1 ? 's' : ''} ${listed(names)}`)
    .join(' and ');
}

/** Every name of a pool that is taken. */
export function namesOf(piece: Piece, pool: Pool): readonly string[] {
  const named: { readonly [Kind in Pool]: readonly { readonly name: string }[] } = {
    zone: [...piece.lines.flatMap(({ runs }) => runs), ...piece.zones],
    pattern: piece.patterns,
    look: piece.looks,
    button: piece.controls.buttons,
  };
  const names = named[pool].map(({ name }) => name);
  return pool === 'zone' ? ['all', ...names] : names;
}

function looksFollowing(looks: Look[], field: 'zone' | 'pattern', follow: Follow): Look[] {
  return mapShared(looks, (look) => {
    const holder: Holder = { what: 'look', name: look.name };
    const clipFollowing = (clip: Clip): Clip => {
      const name = follow(clip[field], holder);
      return name === clip[field] ? clip : { ...clip, [field]: name };
    };
    const tracks = mapShared(look.tracks, (track) => {
      const clips = mapShared(track.clips, clipFollowing);
      return clips === track.clips ? track : { ...track, clips };
    });
    return tracks === look.tracks ? look : { ...look, tracks };
  });
}

function buttonFollowing(button: Button, follow: Follow): Button {
  const holder: Holder = { what: 'button', name: button.name };
  const actionFollowing = (action: Action): Action => {
    if (action.do !== 'go-to-look') return action;
    const look = follow(action.look, holder);
    return look === action.look ? action : { ...action, look };
  };
  let followed = button;
  for (const gesture of ['press', 'hold', 'double'] as const) {
    const action = button[gesture];
    if (action === undefined) continue;
    const next = actionFollowing(action);
    if (next !== action) followed = { ...followed, [gesture]: next };
  }
  return followed;
}
