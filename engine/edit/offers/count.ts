/** Another number or spacing of pixels for a run, with all that follows for its places and zones. */
import type { Checked } from '../../diagnostic.ts';
import type { Piece, Shape } from '../../piece/schema.ts';
import type { Changes } from '../changes.ts';
import { type Edit, type EditOf, together } from '../edit.ts';
import { type Keeping, withCount } from '../geometry/count.ts';
import { withPitch } from '../geometry/pitch.ts';
import { found, given, refused } from '../outcome.ts';
import { runSpot } from '../shelves.ts';
import { sourceUpTo } from '../sources.ts';

/**
 * Gives a run so many pixels. Its worn place gets as many, removed and hidden ones beyond the new end are
 * forgotten, and ranges of zones end there; a zone that lies wholly beyond it is in the way.
 */
export function changeCount(piece: Piece, run: string, count: number, keeping: Keeping): Checked<Edit> {
  return given(runSpot(piece, run), ({ item }) => {
    const flat = withCount(item.flat, count, keeping);
    const worn = item.worn && withCount(item.worn, count, keeping);
    if (flat === undefined || (item.worn !== undefined && worn === undefined)) return uneven(count);
    const isThere = (position: number) => position < count;
    const set: EditOf<'set-run'>['set'] = {
      flat,
      ...(worn === undefined ? {} : { worn }),
      removed: item.removed.filter(isThere),
      hidden: item.hidden.filter(isThere),
    };
    const zones = piece.zones.flatMap(({ name, source }): Edit[] => {
      const shorter = sourceUpTo(source, run, count);
      if (shorter === source || shorter === undefined) return [];
      return [{ kind: 'set-zone', zone: name, set: { source: shorter } }];
    });
    return found(together(`Set count of run ${run}`, [{ kind: 'set-run', run, set }, ...zones]));
  });
}

/** Gives the strip of a run another pitch on the bench; where it is worn stays as it was drawn. */
export function changePitch(piece: Piece, run: string, pitchMillimetres: number): Checked<Edit> {
  return given(runSpot(piece, run), ({ item }) => {
    const set: Changes<{ flat: Shape }> = { flat: withPitch(item.flat, pitchMillimetres) };
    return found(together(`Set pitch of run ${run}`, [{ kind: 'set-run', run, set }]));
  });
}

function uneven(count: number) {
  return refused(
    'count-uneven',
    `A grid cannot have ${count} pixels in full rows.`,
    'Choose a multiple of its columns, or set columns and rows.',
  );
}
