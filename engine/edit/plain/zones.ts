import { zone as zoneSchema } from '../../piece/schema/layout.ts';
import { given } from '../outcome.ts';
import { zoneSpot, zonesOf } from '../shelves.ts';
import { addNamed, type Handlers, remove, rename, reorder, set } from './act.ts';

export const zoneHandlers: Handlers<
  'add-zone' | 'remove-zone' | 'reorder-zone' | 'rename-zone' | 'set-zone'
> = {
  'add-zone': (piece, { index, zone }) =>
    addNamed(piece, 'zone', zonesOf(piece), index, zone, { kind: 'remove-zone', zone: zone.name }),

  'remove-zone': (piece, { zone }) =>
    given(zoneSpot(piece, zone), (spot) =>
      remove(spot, { kind: 'add-zone', index: spot.index, zone: spot.item }),
    ),

  'reorder-zone': (piece, { zone, to }) =>
    given(zoneSpot(piece, zone), (spot) => reorder(spot, to, { kind: 'reorder-zone', zone, to: spot.index })),

  'rename-zone': (piece, { zone, name }) =>
    given(zoneSpot(piece, zone), (spot) =>
      rename(piece, 'zone', spot, name, { kind: 'rename-zone', zone: name, name: zone }),
    ),

  'set-zone': (piece, { zone, set: changes }) =>
    given(zoneSpot(piece, zone), (spot) =>
      set(spot, zoneSchema, changes, (former) => ({ kind: 'set-zone', zone, set: former })),
    ),
};
