/** The lists of a piece that edits put things on, and where a thing lies on one. */
import type { Checked } from '../diagnostic.ts';
import { meantInstead } from '../piece/nearest.ts';
import type {
  Button,
  Clip,
  Line,
  Look,
  NamedZone,
  PatternDefinition,
  Piece,
  Run,
  Track,
} from '../piece/schema.ts';
import { clipped } from '../piece/wording.ts';
import type { ClipAddress, TrackAddress } from './kinds/addresses.ts';
import { replaced } from './lists.ts';
import { found, given, refused } from './outcome.ts';

export interface Shelf<Item> {
  readonly items: readonly Item[];
  /** The piece with another list in the place of this one; all else is shared. */
  readonly put: (items: Item[]) => Piece;
}

export interface Spot<Item> extends Shelf<Item> {
  readonly index: number;
  readonly item: Item;
}

export const zonesOf = (piece: Piece): Shelf<NamedZone> => ({
  items: piece.zones,
  put: (zones) => ({ ...piece, zones }),
});

export const patternsOf = (piece: Piece): Shelf<PatternDefinition> => ({
  items: piece.patterns,
  put: (patterns) => ({ ...piece, patterns }),
});

export const looksOf = (piece: Piece): Shelf<Look> => ({
  items: piece.looks,
  put: (looks) => ({ ...piece, looks }),
});

export const buttonsOf = (piece: Piece): Shelf<Button> => ({
  items: piece.controls.buttons,
  put: (buttons) => ({ ...piece, controls: { ...piece.controls, buttons } }),
});

export function lineSpot(piece: Piece, line: number): Checked<Spot<Line>> {
  const shelf: Shelf<Line> = { items: piece.lines, put: (lines) => ({ ...piece, lines }) };
  return spotAt(shelf, line, 'The piece', 'line');
}

export function runsOf(piece: Piece, line: number): Checked<Shelf<Run>> {
  return given(lineSpot(piece, line), (spot) =>
    found({
      items: spot.item.runs,
      put: (runs: Run[]) => spot.put(replaced(spot.items, spot.index, { ...spot.item, runs })),
    }),
  );
}

export function tracksOf(piece: Piece, look: string): Checked<Shelf<Track>> {
  return given(lookSpot(piece, look), (spot) =>
    found({
      items: spot.item.tracks,
      put: (tracks: Track[]) => spot.put(replaced(spot.items, spot.index, { ...spot.item, tracks })),
    }),
  );
}

export function clipsOf(piece: Piece, at: TrackAddress): Checked<Shelf<Clip>> {
  return given(trackSpot(piece, at), (spot) =>
    found({
      items: spot.item.clips,
      put: (clips: Clip[]) => spot.put(replaced(spot.items, spot.index, { ...spot.item, clips })),
    }),
  );
}

export const zoneSpot = (piece: Piece, name: string) => spotNamed(zonesOf(piece), name, 'zone');
export const patternSpot = (piece: Piece, name: string) => spotNamed(patternsOf(piece), name, 'pattern');
export const lookSpot = (piece: Piece, name: string) => spotNamed(looksOf(piece), name, 'look');
export const buttonSpot = (piece: Piece, name: string) => spotNamed(buttonsOf(piece), name, 'button');

/** Names of runs are unique over all lines; the line comes along. */
export function runSpot(piece: Piece, name: string): Checked<Spot<Run> & { readonly line: number }> {
  const found = piece.lines.findIndex(({ runs }) => runs.some((run) => run.name === name));
  const line = Math.max(found, 0);
  return given(runsOf(piece, line), (shelf) =>
    given(spotNamed(shelf, name, 'run'), (spot) => ({ value: { ...spot, line }, diagnostics: [] })),
  );
}

export function trackSpot(piece: Piece, { look, track }: TrackAddress): Checked<Spot<Track>> {
  return given(tracksOf(piece, look), (shelf) =>
    spotAt(shelf, track, `The look "${clipped(look)}"`, 'track'),
  );
}

export function clipSpot(piece: Piece, at: ClipAddress): Checked<Spot<Clip>> {
  return given(clipsOf(piece, at), (shelf) => spotAt(shelf, at.clip, 'The track', 'clip'));
}

function spotNamed<Item extends { readonly name: string }>(
  shelf: Shelf<Item>,
  name: string,
  what: string,
): Checked<Spot<Item>> {
  const index = shelf.items.findIndex((item) => item.name === name);
  if (index >= 0) return found({ ...shelf, index, item: shelf.items[index]! });
  const names = shelf.items.map((item) => item.name);
  return refused(`${what}-unknown`, `There is no ${what} "${clipped(name)}".`, meantInstead(name, names));
}

function spotAt<Item>(shelf: Shelf<Item>, index: number, owner: string, what: string): Checked<Spot<Item>> {
  const item = shelf.items[index];
  return item === undefined ? noPlace(owner, what, index) : found({ ...shelf, index, item });
}

/** People count from 1. */
export function noPlace(owner: string, what: string, index: number) {
  return refused('place-unknown', `${owner} has no ${what} ${index + 1}.`, 'Choose one that is there.');
}
