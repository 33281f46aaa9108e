/**
 * A zone's source as the tag shows it: parts, how they lie to each other, every how many, and the way round.
 * Every source can be read as a recipe; what the tag has no field for is a part that stays as it is.
 */
import type { ZoneSource } from '../../../../engine/piece/schema.ts';

/** `behind`: one after the other. `beside`: twins, which share their indices. */
export type Manner = 'behind' | 'beside';

export interface Recipe {
  readonly parts: readonly ZoneSource[];
  readonly manner: Manner;
  /** 1 takes all of them. */
  readonly every: number;
  /** The first that is taken, counted from 0. */
  readonly offset: number;
  readonly reversed: boolean;
}

const manners = { union: 'behind', twins: 'beside' } as const;

/** Read from the outside in, in the order in which `sourceOf` puts together. */
export function recipeOf(source: ZoneSource): Recipe {
  const reversed = source.kind === 'reversed';
  const turned = reversed ? source.of : source;
  const {
    of: whole,
    every,
    offset,
  } = turned.kind === 'stepped' ? turned : { of: turned, every: 1, offset: 0 };
  const several = whole.kind === 'union' || whole.kind === 'twins';
  return {
    parts: several ? whole.of : [whole],
    manner: several ? manners[whole.kind] : 'behind',
    every,
    offset,
    reversed,
  };
}

/** @param recipe with one part or more */
export function sourceOf({ parts, manner, every, offset, reversed }: Recipe): ZoneSource {
  const kind = manner === 'behind' ? 'union' : 'twins';
  const whole: ZoneSource = parts.length === 1 ? parts[0]! : { kind, of: [...parts] };
  const stepped: ZoneSource =
    every === 1 && offset === 0 ? whole : { kind: 'stepped', of: whole, every, offset };
  return reversed ? { kind: 'reversed', of: stepped } : stepped;
}

/** A recipe with its parts changed; without any part it is no recipe any more. */
export function withParts(recipe: Recipe, parts: readonly ZoneSource[]): Recipe | undefined {
  return parts.length === 0 ? undefined : { ...recipe, parts };
}

/** A list with one entry at another place. */
export function carried<T>(list: readonly T[], from: number, to: number): T[] {
  const rest = list.filter((_, i) => i !== from);
  return [...rest.slice(0, to), list[from]!, ...rest.slice(to)];
}
