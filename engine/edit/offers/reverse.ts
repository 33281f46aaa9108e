/** A run wired from its other end, with all that follows for its pixels and zones. */

import type { Checked } from '../../diagnostic.ts';
import { pixelCount } from '../../layout/shapes.ts';
import type { Piece } from '../../piece/schema.ts';
import { type Edit, together } from '../edit.ts';
import { reverseShape } from '../geometry/reverse.ts';
import { found, given } from '../outcome.ts';
import { runSpot } from '../shelves.ts';
import { mapLeaves } from '../sources.ts';

/**
 * Every pixel stays where it lies, flat and worn, removed and hidden ones too; only the data comes from the
 * other side. Ranges of zones keep their pixels in their order. Where the whole run is played, light that
 * ran along it now runs back.
 */
export function reverseRun(piece: Piece, run: string): Checked<Edit> {
  return given(runSpot(piece, run), ({ item }) => {
    const last = pixelCount(item.flat) - 1;
    const fromOtherEnd = (position: number) => last - position;
    const set = {
      flat: reverseShape(item.flat),
      ...(item.worn === undefined ? {} : { worn: reverseShape(item.worn) }),
      removed: item.removed.map(fromOtherEnd).reverse(),
      hidden: item.hidden.map(fromOtherEnd).reverse(),
    };
    const zones = piece.zones.flatMap(({ name, source }): Edit[] => {
      const turned = mapLeaves(source, (leaf) =>
        leaf.kind === 'range' && leaf.run === run
          ? { ...leaf, first: fromOtherEnd(leaf.first), last: fromOtherEnd(leaf.last) }
          : leaf,
      );
      if (turned === undefined || turned === source) return [];
      return [{ kind: 'set-zone', zone: name, set: { source: turned } }];
    });
    return found(together(`Reverse run ${run}`, [{ kind: 'set-run', run, set }, ...zones]));
  });
}
