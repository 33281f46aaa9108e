/** What all lists have in common: things are put in, taken out, moved, renamed and set. */

import type { z } from '../../piece/schema/zod.ts';
import type { Piece } from '../../piece/schema.ts';
import { clipped } from '../../piece/wording.ts';
import { type Changes, changed, formerly } from '../changes.ts';
import type { Edit, EditOf, PlainKind } from '../edit.ts';
import { inserted, moved, replaced, without } from '../lists.ts';
import { done, type Outcome, type Refusal, refused } from '../outcome.ts';
import { holdersInWords, holdersOf, namesOf, type Pool, renameReferences } from '../references.ts';
import { noPlace, type Shelf, type Spot } from '../shelves.ts';

/** How each plain edit of some kinds changes a piece; a kind without one does not compile. */
export type Handlers<Kind extends PlainKind> = {
  readonly [K in Kind]: (piece: Piece, edit: EditOf<K>) => Outcome;
};

export function add<Item>(shelf: Shelf<Item>, index: number, item: Item, inverse: Edit): Outcome {
  if (index > shelf.items.length) return noPlace('The list', 'place', index);
  return done(shelf.put(inserted(shelf.items, index, item)), inverse);
}

/** Puts in what has a name, if that is free. */
export function addNamed<Item extends { readonly name: string }>(
  piece: Piece,
  pool: Pool,
  shelf: Shelf<Item>,
  index: number,
  item: Item,
  inverse: Edit,
): Outcome {
  return nameTaken(piece, pool, item.name) ?? add(shelf, index, item, inverse);
}

export function remove<Item>(spot: Spot<Item>, inverse: Edit): Outcome {
  return done(spot.put(without(spot.items, spot.index)), inverse);
}

export function reorder<Item>(spot: Spot<Item>, to: number, inverse: Edit): Outcome {
  if (to >= spot.items.length) return noPlace('The list', 'place', to);
  return done(spot.put(moved(spot.items, spot.index, to)), inverse);
}

/** The thing with another name, and every reference to it with that one too. */
export function rename<Item extends { readonly name: string }>(
  piece: Piece,
  pool: Pool,
  spot: Spot<Item>,
  name: string,
  inverse: Edit,
): Outcome {
  if (name === spot.item.name) return done(piece, inverse);
  const refusal = nameTaken(piece, pool, name) ?? nameAwaited(piece, pool, name);
  if (refusal !== undefined) return refusal;
  const renamed = spot.put(replaced(spot.items, spot.index, { ...spot.item, name }));
  return done(renameReferences(renamed, pool, spot.item.name, name), inverse);
}

/** The thing with some fields changed. `inverse` gets the changes that take these back. */
export function set<Item extends object, Field extends keyof Item>(
  spot: Spot<Item>,
  schema: z.ZodObject,
  changes: Changes<Item, Field>,
  inverse: (changes: Changes<Item, Field>) => Edit,
): Outcome {
  const item = changed(schema, spot.item, changes as Changes<Item>);
  return done(spot.put(replaced(spot.items, spot.index, item)), inverse(formerly(spot.item, changes)));
}

function nameTaken(piece: Piece, pool: Pool, name: string): Refusal | undefined {
  if (!namesOf(piece, pool).includes(name)) return undefined;
  const message = `The name "${clipped(name)}" is taken.`;
  return refused('name-twice', message, `Choose another name for this ${pool}.`);
}

/**
 * Among edits that are done together, something may refer to a name before there is one of that name.
 * Another thing must not slip under it: its own references could not be told from these again.
 */
function nameAwaited(piece: Piece, pool: Pool, name: string): Refusal | undefined {
  const holders = holdersOf(piece, pool, name);
  if (holders.length === 0) return undefined;
  const message = `The name "${clipped(name)}" is referred to by ${holdersInWords(holders)} already.`;
  return refused('name-awaited', message, 'Rename first, then refer to it.');
}
