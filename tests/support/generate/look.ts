/** Random looks: tracks, clips one after the other, keyframes, fades, blends. */
import { blendNames } from '../../../engine/look/blend.ts';
import { type EasingName, easingNames } from '../../../engine/look/easing.ts';
import { libraryPatterns, referenceOf } from '../../../engine/pattern/library.ts';
import { limits } from '../../../engine/piece/limits.ts';
import type { ParameterDescription, PatternDefinition, PieceInput } from '../../../engine/piece/schema.ts';
import type { Chance } from './chance.ts';

type LookInput = PieceInput['looks'][number];
type ClipInput = LookInput['tracks'][number]['clips'][number];
type ValueInput = NonNullable<ClipInput['parameters']>[string];

/** What clips are made of. */
export interface Material {
  readonly zoneNames: readonly string[];
  readonly ownPatterns: readonly PatternDefinition[];
}

export function generateLook(chance: Chance, name: string, material: Material): LookInput {
  const lengthMilliseconds = generateLength(chance);
  const ground: ClipInput = {
    ...generateClip(chance, lengthMilliseconds, 0, lengthMilliseconds, material),
    zone: chance.flip(0.7) ? 'all' : chance.pick(material.zoneNames),
    blend: 'normal',
    ...(chance.flip(0.8) ? { opacity: 255, fadeInMilliseconds: 0, fadeOutMilliseconds: 0 } : {}),
  };
  const overlays = chance.list(chance.whole(0, 3), () => ({
    clips: generateClips(chance, lengthMilliseconds, material),
  }));
  return {
    name,
    lengthMilliseconds,
    // Something lies at the bottom nearly always: most frames are to have light in them.
    tracks: chance.flip(0.97) ? [{ name: 'ground', clips: [ground] }, ...overlays] : overlays,
  };
}

/** Seconds mostly, also such as no tick divides; the shortest and the longest there are now and then. */
function generateLength(chance: Chance): number {
  if (chance.flip(0.05)) return chance.whole(20, 60);
  if (chance.flip(0.05)) return chance.whole(3_600_000, limits.lookMilliseconds);
  return chance.flip() ? chance.whole(1, 30) * 500 : chance.whole(300, 20_000);
}

/** Clips of one track: no two overlap, and nothing stands behind an endless one. */
function generateClips(chance: Chance, lookLength: number, material: Material): ClipInput[] {
  const clips: ClipInput[] = [];
  let free = 0;
  for (let left = chance.whole(1, 3); left > 0 && lookLength - free >= 20; left--) {
    const start = chance.flip(0.4) ? free : chance.whole(free, lookLength - 20);
    const length = chance.flip(0.4) ? lookLength - start : chance.whole(20, lookLength - start);
    clips.push(generateClip(chance, lookLength, start, length, material));
    if (clips.at(-1)!.endless) break;
    free = start + length;
  }
  return clips;
}

function generateClip(
  chance: Chance,
  lookLength: number,
  startMilliseconds: number,
  lengthMilliseconds: number,
  { zoneNames, ownPatterns }: Material,
): ClipInput {
  const endless = chance.flip(0.15);
  const own = ownPatterns.length > 0 && chance.flip(0.3) ? chance.pick(ownPatterns) : undefined;
  const library = chance.pick(libraryPatterns);
  const { parameters } = own ?? library;
  const fade = () => (chance.flip(0.25) ? chance.whole(1, lengthMilliseconds) : 0);
  const clipTimes = endless ? Math.min(2 * lookLength, limits.lookMilliseconds) : lengthMilliseconds;
  return {
    pattern: own?.name ?? referenceOf(library),
    zone: chance.pick(zoneNames),
    startMilliseconds,
    lengthMilliseconds,
    endless,
    opacity: chance.flip(0.5) ? 255 : chance.whole(1, 255),
    blend: chance.pick(blendNames),
    fadeInMilliseconds: Math.min(fade(), limits.fadeMilliseconds),
    fadeOutMilliseconds: endless ? 0 : Math.min(fade(), limits.fadeMilliseconds),
    seed: chance.flip() ? 0 : chance.whole(0, 65535),
    parameters: Object.fromEntries(
      parameters
        .filter(() => chance.flip(0.75))
        .map((parameter) => [parameter.name, generateValue(chance, parameter, clipTimes)]),
    ),
  };
}

function generateValue(chance: Chance, parameter: ParameterDescription, clipTimes: number): ValueInput {
  switch (parameter.kind) {
    case 'yes-no':
      return chance.flip();
    case 'gradient':
      return generateGradient(chance);
    case 'colour':
      return chance.flip(0.3) ? keyed(chance, clipTimes, () => chance.colour()) : chance.colour();
    case 'number':
    case 'whole': {
      const { min, max } = parameter;
      const value = () => {
        if (chance.flip(0.15)) return chance.pick([min, max]);
        return parameter.kind === 'whole' ? chance.whole(min, max) : chance.number(min, max);
      };
      return chance.flip(0.35) ? keyed(chance, clipTimes, value) : value();
    }
  }
}

/** Stops anywhere, also two at one place for a hard edge, and none at either end. */
function generateGradient(chance: Chance): { at: number; colour: string }[] {
  const places = chance.list(chance.whole(1, 6), () => chance.number(0, 1));
  const doubled = places.length > 1 && chance.flip(0.2) ? [...places, places[0]!] : places;
  return doubled.sort((a, b) => a - b).map((at) => ({ at, colour: chance.colour() }));
}

function keyed<Value>(chance: Chance, clipTimes: number, value: () => Value) {
  const times = new Set(chance.list(chance.whole(1, 4), () => chance.whole(0, clipTimes)));
  if (chance.flip()) times.add(0);
  return {
    keys: [...times]
      .sort((a, b) => a - b)
      .map((atMilliseconds) => ({ atMilliseconds, value: value(), easing: generateEasing(chance) })),
  };
}

/** By name, or by four numbers that may overshoot on both sides. */
function generateEasing(chance: Chance): EasingName | [number, number, number, number] {
  if (chance.flip(0.75)) return chance.pick(easingNames);
  return [chance.number(0, 1, 2), chance.number(-2, 3, 2), chance.number(0, 1, 2), chance.number(-2, 3, 2)];
}
