/**
 * What has changed between two values of one kind. Edits share with the piece before all that they leave
 * alone; a worker that is told the difference shares it too, and knows what it need not work out again.
 */
export type Difference =
  | { readonly kind: 'none' }
  /** Another value in its place. */
  | { readonly kind: 'put'; readonly value: unknown }
  /** The same fields or as many items; some of them differ within. */
  | { readonly kind: 'within'; readonly parts: readonly (readonly [key: string, Difference])[] };

const none: Difference = { kind: 'none' };

/** Looks only into what is not the very same: takes as long as the edit is large. */
export function differenceOf(before: unknown, after: unknown): Difference {
  if (Object.is(before, after)) return none;
  if (!isContainer(before) || !isContainer(after)) return { kind: 'put', value: after };
  const keys = Object.keys(after);
  const alike = Array.isArray(before) === Array.isArray(after) && sameKeys(Object.keys(before), keys);
  if (!alike) return { kind: 'put', value: after };
  const parts = keys.flatMap((key) => {
    const part = differenceOf(before[key], after[key]);
    return part.kind === 'none' ? [] : [[key, part] as const];
  });
  return parts.length === 0 ? none : { kind: 'within', parts };
}

/** The value after; shares with the one before whatever is the same. */
export function changed<T>(before: T, difference: Difference): T {
  switch (difference.kind) {
    case 'none':
      return before;
    case 'put':
      return difference.value as T;
    case 'within': {
      const after = (Array.isArray(before) ? [...before] : { ...before }) as Container;
      for (const [key, part] of difference.parts) after[key] = changed(after[key], part);
      return after as T;
    }
  }
}

type Container = Record<string, unknown>;

function isContainer(value: unknown): value is Container {
  return typeof value === 'object' && value !== null;
}

/** In the same order as well: a piece is written with its fields as they stand. */
function sameKeys(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((key, i) => key === b[i]);
}
