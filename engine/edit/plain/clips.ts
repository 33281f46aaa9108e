import { clip as clipSchema } from '../../piece/schema/look.ts';
import { without } from '../lists.ts';
import { given } from '../outcome.ts';
import { clipSpot, clipsOf } from '../shelves.ts';
import { add, type Handlers, remove, set } from './act.ts';

export const clipHandlers: Handlers<'add-clip' | 'remove-clip' | 'move-clip' | 'set-clip' | 'set-parameter'> =
  {
    'add-clip': (piece, { at, clip }) =>
      given(clipsOf(piece, at), (shelf) => add(shelf, at.clip, clip, { kind: 'remove-clip', at })),

    'remove-clip': (piece, { at }) =>
      given(clipSpot(piece, at), (spot) => remove(spot, { kind: 'add-clip', at, clip: spot.item })),

    'move-clip': (piece, { at, to, startMilliseconds }) =>
      given(clipSpot(piece, at), (spot) =>
        given(clipsOf(spot.put(without(spot.items, spot.index)), to), (shelf) =>
          add(
            shelf,
            to.clip,
            { ...spot.item, startMilliseconds },
            {
              kind: 'move-clip',
              at: to,
              to: at,
              startMilliseconds: spot.item.startMilliseconds,
            },
          ),
        ),
      ),

    'set-clip': (piece, { at, set: changes }) =>
      given(clipSpot(piece, at), (spot) =>
        set(spot, clipSchema, changes, (former) => ({ kind: 'set-clip', at, set: former })),
      ),

    /** One that was set is put back among the others in its old place, which needs all of them. */
    'set-parameter': (piece, { at, parameter, value }) =>
      given(clipSpot(piece, at), (spot) => {
        const { parameters } = spot.item;
        const former = Object.hasOwn(parameters, parameter) ? parameters[parameter]! : null;
        const { [parameter]: _, ...others } = parameters;
        const next = value === null ? others : { ...parameters, [parameter]: value };
        return set(spot, clipSchema, { parameters: next }, ({ parameters: all = {} }) =>
          value === null
            ? { kind: 'set-clip', at, set: { parameters: all } }
            : { kind: 'set-parameter', at, parameter, value: former },
        );
      }),
  };
