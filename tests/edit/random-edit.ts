/** Random edits of every kind, mostly such as a piece accepts, some of them just beyond. */
import { type Edit, type EditKind, type EditOf, editKinds, type SingleEdit } from '../../engine/edit/edit.ts';
import { namesOf } from '../../engine/edit/references.ts';
import { blendNames } from '../../engine/look/blend.ts';
import { chipNames } from '../../engine/parts/chips.ts';
import { look as lookSchema } from '../../engine/piece/schema/look.ts';
import type { ParameterDescription, Piece } from '../../engine/piece/schema.ts';
import type { Chance } from '../support/generate/chance.ts';
import { generateLook } from '../support/generate/look.ts';
import {
  action,
  actionOrNone,
  buttonName,
  clipAt,
  degrees,
  easing,
  freshClip,
  freshRun,
  freshSource,
  keyedAt,
  keyOf,
  lookName,
  newName,
  ownName,
  parameterAt,
  parameters,
  part,
  placeIn,
  placeToAdd,
  point,
  randomValue,
  runName,
  runsOf,
  selected,
  source,
  trackAt,
  zoneName,
} from './random-values.ts';

type Maker<Kind extends EditKind> = (chance: Chance, piece: Piece) => EditOf<Kind>;

/** An edit of this kind, or of any. */
export function randomEdit(chance: Chance, piece: Piece, kind: EditKind = chance.pick(editKinds)): Edit {
  return (makers[kind] as (chance: Chance, piece: Piece) => Edit)(chance, piece);
}

const makers: { readonly [Kind in EditKind]: Maker<Kind> } = {
  'set-piece': (chance) => ({
    kind: 'set-piece',
    set: part(chance, {
      name: newName(chance),
      board: chance.pick(chipNames),
      tickMilliseconds: chance.whole(5, 60),
    }),
  }),
  'set-line': (chance) => ({
    kind: 'set-line',
    line: 0,
    set: part(chance, { pin: chance.whole(2, 12), part: 'ws2812b' as const }),
  }),
  'set-output': (chance) => ({
    kind: 'set-output',
    set: part(chance, {
      startBrightness: chance.whole(0, 255),
      curve: chance.pick(['srgb', 'lightness', { power: 2.2 }] as const),
      balance: chance.flip(0.3) ? null : chance.list(3, () => chance.whole(0, 256)),
    }),
  }),
  'set-supply': (chance) => ({
    kind: 'set-supply',
    set: part(chance, {
      limitMilliamps: chance.whole(100, 4000),
      volts: chance.pick([3.7, 5, 5.1]),
      keepAliveMilliamps: chance.whole(0, 120),
    }),
  }),
  'set-controls': (chance) => ({
    kind: 'set-controls',
    set: part(chance, {
      debounceMilliseconds: chance.whole(1, 60),
      holdMilliseconds: chance.whole(100, 2000),
      doubleMilliseconds: chance.whole(50, 500),
      caughtMilliseconds: chance.whole(1000, 10_000),
      brightnessSteps: chance.list(chance.whole(1, 4), () => chance.whole(1, 255)),
    }),
  }),

  'add-run': (chance, piece) => ({
    kind: 'add-run',
    line: 0,
    index: placeToAdd(chance, runsOf(piece)),
    run: freshRun(chance),
  }),
  'remove-run': (chance, piece) => ({ kind: 'remove-run', run: runName(chance, piece) }),
  'duplicate-run': (chance, piece) => ({
    kind: 'duplicate-run',
    run: runName(chance, piece),
    name: newName(chance),
  }),
  'reorder-run': (chance, piece) => ({
    kind: 'reorder-run',
    run: runName(chance, piece),
    to: placeIn(chance, runsOf(piece)),
  }),
  'rename-run': (chance, piece) => ({
    kind: 'rename-run',
    run: runName(chance, piece),
    name: newName(chance),
  }),
  'set-run'(chance, piece) {
    const { flat, removed, hidden } = freshRun(chance);
    const run = chance.pick(runsOf(piece));
    const set = chance.pick([
      { flat },
      { flat, worn: null, removed, hidden },
      { removed: [] },
      { hidden: [0] },
      { worn: chance.flip() ? null : run.flat },
    ]);
    return { kind: 'set-run', run: run.name, set };
  },
  'move-runs': (chance, piece) => ({ kind: 'move-runs', ...selected(chance, piece), by: point(chance) }),
  'turn-runs': (chance, piece) => ({
    kind: 'turn-runs',
    ...selected(chance, piece),
    about: point(chance),
    degrees: degrees(chance),
  }),
  'scale-runs': (chance, piece) => ({
    kind: 'scale-runs',
    ...selected(chance, piece),
    about: point(chance),
    factor: chance.number(0.5, 2),
  }),
  'mirror-runs': (chance, piece) => ({
    kind: 'mirror-runs',
    ...selected(chance, piece),
    axis: { through: point(chance), degrees: degrees(chance) },
  }),

  'add-zone': (chance, piece) => ({
    kind: 'add-zone',
    index: placeToAdd(chance, piece.zones),
    zone: { name: newName(chance), source: freshSource(chance, piece) },
  }),
  'remove-zone': (chance, piece) => ({ kind: 'remove-zone', zone: zoneName(chance, piece) }),
  'reorder-zone': (chance, piece) => ({
    kind: 'reorder-zone',
    zone: zoneName(chance, piece),
    to: placeIn(chance, piece.zones),
  }),
  'rename-zone': (chance, piece) => ({
    kind: 'rename-zone',
    zone: zoneName(chance, piece),
    name: newName(chance),
  }),
  'set-zone': (chance, piece) => ({
    kind: 'set-zone',
    zone: zoneName(chance, piece),
    set: { source: freshSource(chance, piece) },
  }),

  'add-pattern': (chance, piece) => ({
    kind: 'add-pattern',
    index: placeToAdd(chance, piece.patterns),
    pattern: { name: newName(chance), source: source(chance), parameters: parameters(chance) },
  }),
  'remove-pattern': (chance, piece) => ({ kind: 'remove-pattern', pattern: ownName(chance, piece) }),
  'reorder-pattern': (chance, piece) => ({
    kind: 'reorder-pattern',
    pattern: ownName(chance, piece),
    to: placeIn(chance, piece.patterns),
  }),
  'rename-pattern': (chance, piece) => ({
    kind: 'rename-pattern',
    pattern: ownName(chance, piece),
    name: newName(chance),
  }),
  'set-pattern': (chance, piece) => ({
    kind: 'set-pattern',
    pattern: ownName(chance, piece),
    set: part(chance, { source: source(chance), parameters: parameters(chance) }),
  }),

  'add-look': (chance, piece) => ({
    kind: 'add-look',
    index: placeToAdd(chance, piece.looks),
    look: lookSchema.parse(
      generateLook(chance, newName(chance), {
        zoneNames: namesOf(piece, 'zone'),
        ownPatterns: piece.patterns,
      }),
    ),
  }),
  'remove-look': (chance, piece) => ({ kind: 'remove-look', look: lookName(chance, piece) }),
  'duplicate-look': (chance, piece) => ({
    kind: 'duplicate-look',
    look: lookName(chance, piece),
    name: newName(chance),
  }),
  'reorder-look': (chance, piece) => ({
    kind: 'reorder-look',
    look: lookName(chance, piece),
    to: placeIn(chance, piece.looks),
  }),
  'rename-look': (chance, piece) => ({
    kind: 'rename-look',
    look: lookName(chance, piece),
    name: newName(chance),
  }),
  'set-look'(chance, piece) {
    const look = chance.pick(piece.looks);
    const to = chance.flip() ? { to: lookName(chance, piece) } : {};
    const set = part(chance, {
      lengthMilliseconds: chance.whole(look.lengthMilliseconds, look.lengthMilliseconds + 4000),
      dissolveMilliseconds: chance.whole(0, 5000),
      moveOn: chance.flip(0.3) ? null : { afterMilliseconds: chance.whole(20, 60_000), ...to },
    });
    return { kind: 'set-look', look: look.name, set };
  },

  'add-track'(chance, piece) {
    const look = chance.pick(piece.looks);
    const at = { look: look.name, track: placeToAdd(chance, look.tracks) };
    const clips = chance.flip() ? [freshClip(chance, piece, look)] : [];
    return { kind: 'add-track', at, track: { ...(chance.flip() ? { name: newName(chance) } : {}), clips } };
  },
  'remove-track': (chance, piece) => ({ kind: 'remove-track', at: trackAt(chance, piece) }),
  'reorder-track'(chance, piece) {
    const at = trackAt(chance, piece);
    const { tracks } = piece.looks.find(({ name }) => name === at.look)!;
    return { kind: 'reorder-track', at, to: placeIn(chance, tracks) };
  },
  'set-track': (chance, piece) => ({
    kind: 'set-track',
    at: trackAt(chance, piece),
    set: { name: chance.flip(0.4) ? null : newName(chance) },
  }),

  'add-clip'(chance, piece) {
    const at = trackAt(chance, piece);
    const look = piece.looks.find(({ name }) => name === at.look)!;
    const clip = placeToAdd(chance, look.tracks[at.track]?.clips ?? []);
    return { kind: 'add-clip', at: { ...at, clip }, clip: freshClip(chance, piece, look) };
  },
  'remove-clip': (chance, piece) => ({ kind: 'remove-clip', at: clipAt(chance, piece).at }),
  'move-clip'(chance, piece) {
    const { at, clip, look } = clipAt(chance, piece);
    const free = Math.max(0, look.lengthMilliseconds - clip.lengthMilliseconds);
    const to = chance.flip() ? at : { ...trackAt(chance, piece), clip: 0 };
    return { kind: 'move-clip', at, to, startMilliseconds: chance.whole(0, free) };
  },
  'duplicate-clip'(chance, piece) {
    const { at, clip, look } = clipAt(chance, piece);
    const free = Math.max(0, look.lengthMilliseconds - clip.lengthMilliseconds);
    const to = { ...trackAt(chance, piece), clip: 0 };
    return { kind: 'duplicate-clip', at, to, startMilliseconds: chance.whole(0, free) };
  },
  'trim-clip'(chance, piece) {
    const { at, clip } = clipAt(chance, piece);
    const by = chance.whole(0, Math.floor(clip.lengthMilliseconds / 2));
    return {
      kind: 'trim-clip',
      at,
      startMilliseconds: clip.startMilliseconds + (chance.flip() ? by : 0),
      lengthMilliseconds: clip.lengthMilliseconds - by,
    };
  },
  'split-clip'(chance, piece) {
    const { at, clip } = clipAt(chance, piece, ({ endless }) => !endless);
    const inside = chance.whole(0, clip.lengthMilliseconds);
    return { kind: 'split-clip', at, atMilliseconds: clip.startMilliseconds + inside };
  },
  'set-clip'(chance, piece) {
    const { at, clip } = clipAt(chance, piece);
    const set = part(chance, {
      zone: chance.pick(namesOf(piece, 'zone')),
      endless: chance.flip(0.2),
      opacity: chance.whole(0, 255),
      blend: chance.pick(blendNames),
      fadeInMilliseconds: chance.whole(0, clip.lengthMilliseconds),
      fadeOutMilliseconds: chance.whole(0, clip.lengthMilliseconds),
      seed: chance.whole(0, 65535),
    });
    return { kind: 'set-clip', at, set };
  },
  'set-parameter'(chance, piece) {
    const { at, parameter } = parameterAt(chance, piece, () => true);
    const value = chance.flip(0.25) ? null : randomValue(chance, parameter);
    return { kind: 'set-parameter', at, parameter: parameter.name, value };
  },

  'add-key'(chance, piece) {
    const isKeyable = ({ kind }: ParameterDescription) => kind !== 'yes-no' && kind !== 'gradient';
    const { at, parameter } = parameterAt(chance, piece, isKeyable);
    return {
      kind: 'add-key',
      at,
      parameter: parameter.name,
      key: keyOf(chance, parameter, chance.whole(0, 6000)),
    };
  },
  'remove-key'(chance, piece) {
    const { at, parameter, keys } = keyedAt(chance, piece);
    return { kind: 'remove-key', at, parameter, key: placeIn(chance, keys) };
  },
  'move-key'(chance, piece) {
    const { at, parameter, keys } = keyedAt(chance, piece);
    const key = placeIn(chance, keys);
    return { kind: 'move-key', at, parameter, key, toMilliseconds: chance.whole(0, 6000) };
  },
  'set-key'(chance, piece) {
    const { at, parameter, keys } = keyedAt(chance, piece);
    const key = placeIn(chance, keys);
    const value = keys[chance.whole(0, Math.max(0, keys.length - 1))]?.value ?? 0;
    return { kind: 'set-key', at, parameter, key, set: part(chance, { easing: easing(chance), value }) };
  },

  'add-button': (chance, piece) => ({
    kind: 'add-button',
    index: placeToAdd(chance, piece.controls.buttons),
    button: { name: newName(chance), pin: chance.whole(2, 12), press: action(chance, piece) },
  }),
  'remove-button': (chance, piece) => ({ kind: 'remove-button', button: buttonName(chance, piece) }),
  'reorder-button': (chance, piece) => ({
    kind: 'reorder-button',
    button: buttonName(chance, piece),
    to: placeIn(chance, piece.controls.buttons),
  }),
  'rename-button': (chance, piece) => ({
    kind: 'rename-button',
    button: buttonName(chance, piece),
    name: newName(chance),
  }),
  'set-button': (chance, piece) => ({
    kind: 'set-button',
    button: buttonName(chance, piece),
    set: part(chance, {
      pin: chance.whole(2, 12),
      press: actionOrNone(chance, piece),
      hold: actionOrNone(chance, piece),
      double: actionOrNone(chance, piece),
    }),
  }),

  /** Drawn for the piece as it is before the first of them: later ones may no longer fit. */
  together: (chance, piece) => ({
    kind: 'together',
    name: 'Several at once',
    edits: chance.list(
      chance.whole(1, 4),
      () => randomEdit(chance, piece, chance.pick(singleKinds)) as SingleEdit,
    ),
  }),
};

const singleKinds = editKinds.filter((kind) => kind !== 'together');
