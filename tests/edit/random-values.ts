/** Names, places and values for random edits: mostly such as the piece has or allows. */
import { courseOf } from '../../engine/edit/courses/course.ts';
import { namesOf } from '../../engine/edit/references.ts';
import { blendNames } from '../../engine/look/blend.ts';
import { easingNames } from '../../engine/look/easing.ts';
import { findLibraryPattern, libraryPatterns, referenceOf } from '../../engine/pattern/library.ts';
import { run as runSchema } from '../../engine/piece/schema/layout.ts';
import type {
  Action,
  Clip,
  Look,
  ParameterDescription,
  ParameterValue,
  Piece,
  Run,
  ZoneSource,
} from '../../engine/piece/schema.ts';
import type { Chance } from '../support/generate/chance.ts';
import { generateLayout } from '../support/generate/layout.ts';

const words = ['reed', 'heron', 'weir', 'sluice', 'ferry', 'eddy', 'lantern', 'prow', 'oar', 'willow'];

/** New mostly, as a name that is taken is refused. */
export const newName = (chance: Chance) => `${chance.pick(words)} ${chance.whole(1, 400)}`;

const names = (things: readonly { readonly name: string }[]) => things.map(({ name }) => name);
export const runsOf = (piece: Piece) => piece.lines.flatMap(({ runs }) => runs);
const some = (chance: Chance, list: readonly string[]) => (list.length === 0 ? 'nobody' : chance.pick(list));
export const runName = (chance: Chance, piece: Piece) => some(chance, names(runsOf(piece)));
export const zoneName = (chance: Chance, piece: Piece) => some(chance, names(piece.zones));
export const lookName = (chance: Chance, piece: Piece) => some(chance, names(piece.looks));
export const ownName = (chance: Chance, piece: Piece) => some(chance, names(piece.patterns));
export const buttonName = (chance: Chance, piece: Piece) => some(chance, names(piece.controls.buttons));
export const placeToAdd = (chance: Chance, list: readonly unknown[]) => chance.whole(0, list.length);
export const placeIn = (chance: Chance, list: readonly unknown[]) =>
  chance.whole(0, Math.max(0, list.length - 1));

export const number = (chance: Chance) => chance.number(-300, 300, 2);
export const point = (chance: Chance): [number, number] => [number(chance), number(chance)];
export const degrees = (chance: Chance) =>
  chance.flip() ? chance.pick([0, 45, 90, 180, 270, 360, -90]) : chance.number(-400, 400, 2);

export function trackAt(chance: Chance, piece: Piece) {
  const withTracks = piece.looks.filter(({ tracks }) => tracks.length > 0);
  const look = chance.pick(withTracks.length > 0 ? withTracks : piece.looks);
  return { look: look.name, track: placeIn(chance, look.tracks) };
}

interface Found {
  readonly at: { look: string; track: number; clip: number };
  readonly clip: Clip;
  readonly look: Look;
}

/** A clip of the piece, if there is one that passes the test; else a place where none is. */
export function clipAt(chance: Chance, piece: Piece, test: (clip: Clip) => boolean = () => true): Found {
  const all = piece.looks.flatMap((look) =>
    look.tracks.flatMap(({ clips }, track) =>
      clips.map((clip, index) => ({ at: { look: look.name, track, clip: index }, clip, look })),
    ),
  );
  const fitting = all.filter(({ clip }) => test(clip));
  if (fitting.length > 0) return chance.pick(fitting);
  if (all.length > 0) return chance.pick(all);
  const look = chance.pick(piece.looks);
  return { at: { look: look.name, track: 0, clip: 0 }, clip: freshClip(chance, piece, look), look };
}

export function freshClip(chance: Chance, piece: Piece, look: Look): Clip {
  const own = piece.patterns.length > 0 && chance.flip(0.3) ? chance.pick(piece.patterns) : undefined;
  const library = chance.pick(libraryPatterns);
  const lengthMilliseconds = chance.whole(20, Math.max(20, Math.floor(look.lengthMilliseconds / 3)));
  return {
    pattern: own?.name ?? referenceOf(library),
    zone: chance.pick(namesOf(piece, 'zone')),
    startMilliseconds: chance.whole(0, Math.max(0, look.lengthMilliseconds - lengthMilliseconds)),
    lengthMilliseconds,
    endless: chance.flip(0.1),
    opacity: chance.whole(0, 255),
    blend: chance.pick(blendNames),
    fadeInMilliseconds: 0,
    fadeOutMilliseconds: chance.flip(0.2) ? Math.min(lengthMilliseconds, 400) : 0,
    seed: chance.whole(0, 65535),
    parameters: Object.fromEntries(
      (own ?? library).parameters
        .filter(() => chance.flip())
        .map((parameter) => [parameter.name, randomValue(chance, parameter)]),
    ),
  };
}

function parametersOf(piece: Piece, clip: Clip): readonly ParameterDescription[] {
  const own = piece.patterns.find(({ name }) => name === clip.pattern);
  return (findLibraryPattern(clip.pattern) ?? own)?.parameters ?? [];
}

function still(chance: Chance, parameter: ParameterDescription): number | string | boolean {
  if (parameter.kind === 'yes-no') return chance.flip();
  if (parameter.kind === 'number') return chance.number(parameter.min, parameter.max);
  return parameter.kind === 'whole' ? chance.whole(parameter.min, parameter.max) : chance.colour();
}

export function randomValue(chance: Chance, parameter: ParameterDescription): ParameterValue {
  if (parameter.kind === 'gradient') {
    return [
      { at: 0, colour: chance.colour() },
      { at: chance.number(0.1, 1), colour: chance.colour() },
    ];
  }
  if (parameter.kind === 'yes-no' || chance.flip(0.6)) return still(chance, parameter);
  const times = [...new Set(chance.list(chance.whole(1, 4), () => chance.whole(0, 5000)))];
  return { keys: times.sort((a, b) => a - b).map((ms) => keyOf(chance, parameter, ms)) } as ParameterValue;
}

export function keyOf(chance: Chance, parameter: ParameterDescription, atMilliseconds: number) {
  return { atMilliseconds, value: still(chance, parameter) as number | string, easing: easing(chance) };
}

export const easing = (chance: Chance) =>
  chance.flip(0.6)
    ? chance.pick(easingNames)
    : ([chance.number(0, 1), chance.number(-1, 2), chance.number(0, 1), chance.number(-1, 2)] as [
        number,
        number,
        number,
        number,
      ]);

/** A parameter of a clip with keyframes, where the piece has one. */
export function keyedAt(chance: Chance, piece: Piece) {
  const found = clipAt(chance, piece, ({ parameters }) => Object.values(parameters).some(courseOf));
  const keyed = Object.entries(found.clip.parameters).filter(([, value]) => courseOf(value) !== undefined);
  const [parameter, value] = keyed.length > 0 ? chance.pick(keyed) : ['tint', undefined];
  return { ...found, parameter, keys: courseOf(value) ?? [] };
}

/** A parameter that a clip's pattern knows, set or not. */
export function parameterAt(chance: Chance, piece: Piece, test: (one: ParameterDescription) => boolean) {
  const found = clipAt(chance, piece, (clip) => parametersOf(piece, clip).some(test));
  const known = parametersOf(piece, found.clip).filter(test);
  const tint: ParameterDescription = { kind: 'colour', name: 'tint', label: 'Tint', default: '#ffffff' };
  return { ...found, parameter: known.length > 0 ? chance.pick(known) : tint };
}

export function freshRun(chance: Chance): Run {
  const runs = generateLayout(chance, 6).line.runs;
  return runSchema.parse({ ...runs[0], name: newName(chance) });
}

export function freshSource(chance: Chance, piece: Piece): ZoneSource {
  const parts = chance
    .some(runsOf(piece), chance.whole(1, 3))
    .map(
      ({ name }): ZoneSource =>
        chance.flip(0.8)
          ? { kind: 'run', run: name }
          : { kind: 'range', run: name, first: chance.whole(0, 3), last: 0 },
    );
  if (parts.length === 0 || chance.flip(0.1)) return { kind: 'all' };
  const of: ZoneSource =
    parts.length === 1 ? parts[0]! : { kind: chance.pick(['union', 'twins'] as const), of: parts };
  if (chance.flip(0.2)) return { kind: 'reversed', of };
  return chance.flip(0.2) ? { kind: 'stepped', of, every: chance.whole(1, 3), offset: 0 } : of;
}

export function action(chance: Chance, piece: Piece): Action {
  const doing = chance.pick([
    'next-look',
    'previous-look',
    'go-to-look',
    'brightness-step',
    'blackout',
    'pause',
  ] as const);
  return doing === 'go-to-look' ? { do: doing, look: lookName(chance, piece) } : { do: doing };
}

export const actionOrNone = (chance: Chance, piece: Piece) =>
  chance.flip(0.3) ? null : action(chance, piece);

export function parameters(chance: Chance): ParameterDescription[] {
  return [
    { kind: 'number', name: 'pace', label: 'Pace', min: 0, max: chance.whole(1, 5), default: 1 },
    { kind: 'whole', name: 'steps', label: 'Steps', min: 1, max: chance.whole(4, 9), default: 2 },
    { kind: 'colour', name: 'tint', label: 'Tint', default: chance.colour() },
  ];
}

export const source = (chance: Chance) =>
  `lowp vec3 light() { return vec3(along, ${chance.number(0, 0.9, 2)} * turn, 0.5); }\n`;

/** Some of the fields, at least one. */
export function part<Fields extends object>(chance: Chance, all: Fields): Partial<Fields> {
  const entries = Object.entries(all);
  return Object.fromEntries(
    chance.some(entries, chance.whole(1, Math.min(3, entries.length))),
  ) as Partial<Fields>;
}

export const selected = (chance: Chance, piece: Piece) => ({
  side: chance.pick(['flat', 'worn'] as const),
  runs: chance.some(names(runsOf(piece)), chance.whole(1, 3)).concat(chance.flip(0.02) ? ['nobody'] : []),
});
