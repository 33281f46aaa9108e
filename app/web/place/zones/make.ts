/** Zones made and added to from the table. */
import { newZone } from '../../../../engine/edit/offers/add-zone.ts';
import { type PixelOfRun, sourceOfPixels } from '../../../../engine/edit/offers/zone-of-pixels.ts';
import type { Piece, ZoneSource } from '../../../../engine/piece/schema.ts';
import type { Session } from '../../session/session.ts';
import type { Hand } from '../hand.ts';
import { runsOf } from '../surface/places.ts';
import { layoutOf, pixelsOfZone } from './layout-of.ts';
import { recipeOf, sourceOf } from './recipe.ts';

/** Adds a zone and takes it in hand. */
export function makeZone(session: Session, hand: Hand, source: ZoneSource): void {
  const piece = session.bench.get().open?.piece;
  if (piece === undefined) return;
  const edit = newZone(piece, source, 'zone');
  session.edit(edit);
  if (session.bench.get().editFaults.length === 0) hand.zone.set(edit.zone.name);
}

/** Addresses on the line as positions in their runs, as zones are told them. */
export function positionsOf(piece: Piece, addresses: readonly number[]): PixelOfRun[] {
  const runs = runsOf(piece);
  const { pixels } = layoutOf(piece);
  return addresses.map((address) => {
    const { run, position } = pixels[address]!;
    return { run: runs[run]!.name, position };
  });
}

/** The source of just these pixels, in the order of the line; none where no zone may have them. */
export function sourceOfAddresses(piece: Piece, addresses: readonly number[]): ZoneSource | undefined {
  return sourceOfPixels(piece, positionsOf(piece, addresses));
}

/** More pixels behind those that a zone has; undefined where it has them all. */
export function withMore(piece: Piece, zone: string, addresses: readonly number[]): ZoneSource | undefined {
  const before = piece.zones.find(({ name }) => name === zone)?.source;
  const has = new Set(pixelsOfZone(layoutOf(piece), zone));
  const more = sourceOfAddresses(
    piece,
    addresses.filter((address) => !has.has(address)),
  );
  if (before === undefined || more === undefined) return undefined;
  const recipe = recipeOf(before);
  const isPlain = recipe.manner === 'behind' && recipe.every === 1 && recipe.offset === 0 && !recipe.reversed;
  if (isPlain) return sourceOf({ ...recipe, parts: [...recipe.parts, ...recipeOf(more).parts] });
  return { kind: 'union', of: [before, more] };
}
