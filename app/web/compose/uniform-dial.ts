/** A first description for a parameter that a source declares and nothing describes yet. */
import type { ParameterDescription } from '../../../engine/piece/schema.ts';

const descriptions: Record<string, (named: { name: string; label: string }) => ParameterDescription> = {
  float: (named) => ({ kind: 'number', ...named, min: 0, max: 1, default: 0.5 }),
  int: (named) => ({ kind: 'whole', ...named, min: 1, max: 16, default: 4 }),
  bool: (named) => ({ kind: 'yes-no', ...named, default: false }),
  vec3: (named) => ({ kind: 'colour', ...named, default: '#ffae42' }),
};

/**
 * @param at offset of the parameter's name in the source
 * @returns null where no plain `uniform TYPE NAME;` stands there
 */
export function describeUniform(source: string, at: number): ParameterDescription | null {
  const name = /^[A-Za-z]\w{0,31}/.exec(source.slice(at))?.[0];
  const type = /\buniform\s+(?:(?:low|medium|high)p\s+)?(\w+)\s+(?:\w+\s*,\s*)*$/.exec(
    source.slice(0, at),
  )?.[1];
  const describe = type === undefined ? undefined : descriptions[type];
  if (name === undefined || describe === undefined) return null;
  return describe({ name, label: labelOf(name) });
}

/** `atX` and `at_x` as `At x`. */
function labelOf(name: string): string {
  const words = name
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .replaceAll('_', ' ')
    .trim()
    .toLowerCase();
  return words.charAt(0).toUpperCase() + words.slice(1);
}
