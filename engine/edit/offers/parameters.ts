/** Parameters that a clip has set, made to fit another pattern, or the same with other bounds. */
import type { Clip, ParameterDescription, ParameterValue } from '../../piece/schema.ts';
import { courseOf, valueOfCourse } from '../courses/course.ts';
import type { Key } from '../kinds/keys.ts';
import { same } from '../same.ts';

type Parameters = Clip['parameters'];
type Bounds = Pick<Extract<ParameterDescription, { kind: 'number' | 'whole' }>, 'kind' | 'min' | 'max'>;

/**
 * What the pattern knows by the same name and kind, numbers held within its bounds; the rest is left to its
 * defaults. The very same parameters if all fit.
 */
export function fitting(parameters: Parameters, known: readonly ParameterDescription[]): Parameters {
  const fitted = Object.entries(parameters).flatMap(([name, value]) => {
    const description = known.find((one) => one.name === name);
    const fit = description && fits[description.kind](value, description as never);
    return fit === undefined ? [] : [[name, fit] as const];
  });
  const result = Object.fromEntries(fitted);
  return same(result, parameters) ? parameters : result;
}

type Fit<Description> = (value: ParameterValue, description: Description) => ParameterValue | undefined;

const fits: {
  readonly [Kind in ParameterDescription['kind']]: Fit<Extract<ParameterDescription, { kind: Kind }>>;
} = {
  number: (value, bounds) => fitNumber(value, bounds),
  whole: (value, bounds) => fitNumber(value, bounds),
  'yes-no': (value) => (typeof value === 'boolean' ? value : undefined),
  colour: (value) => (typeof (courseOf(value)?.[0]?.value ?? value) === 'string' ? value : undefined),
  gradient: (value) => (Array.isArray(value) ? value : undefined),
};

function fitNumber(value: ParameterValue, bounds: Bounds): ParameterValue | undefined {
  if (typeof value === 'number') return held(value, bounds);
  const course = courseOf(value);
  if (course === undefined || course.some((key) => typeof key.value !== 'number')) return undefined;
  return valueOfCourse(course.map((key): Key => ({ ...key, value: held(key.value as number, bounds) })));
}

function held(value: number, { kind, min, max }: Bounds): number {
  const near = Math.min(max, Math.max(min, value));
  return kind === 'whole' ? Math.round(near) : near;
}
