/** The numbers that say where a shape lies and how large it is, by kind. */
import { moveNode } from '../../../../engine/edit/geometry/path.ts';
import type { ByShape, ShapeOf } from '../../../../engine/edit/geometry/shape-of.ts';
import { byShape } from '../../../../engine/edit/geometry/shape-of.ts';
import type { Shape } from '../../../../engine/piece/schema.ts';

export interface ShapeField {
  readonly label: string;
  readonly unit: string;
  readonly min: number;
  readonly max: number;
  readonly step: number;
  readonly value: number;
  /** The shape with another number in this place. */
  with(value: number): Shape;
}

export function fieldsOf(shape: Shape): readonly ShapeField[] {
  return byShape(fields, shape);
}

const farthest = 100_000;
const mostDegrees = 3600;

const spot = (label: string, value: number, change: (value: number) => Shape): ShapeField => ({
  label,
  unit: 'mm',
  min: -farthest,
  max: farthest,
  step: 1,
  value,
  with: change,
});

const angle = (label: string, value: number, change: (value: number) => Shape): ShapeField => ({
  label,
  unit: '°',
  min: -mostDegrees,
  max: mostDegrees,
  step: 5,
  value,
  with: change,
});

const length = (label: string, value: number, max: number, change: (value: number) => Shape): ShapeField => ({
  label,
  unit: 'mm',
  min: 1,
  max,
  step: 1,
  value,
  with: change,
});

const fields: ByShape<[], readonly ShapeField[]> = {
  straight: (shape) => [
    ...begins(shape, (start) => ({ ...shape, start })),
    angle('Direction', shape.directionDegrees, (directionDegrees) => ({ ...shape, directionDegrees })),
  ],

  ring: (shape) => [
    ...centred(shape, (centre) => ({ ...shape, centre })),
    length('Diameter', shape.diameterMillimetres, 20_000, (diameterMillimetres) => ({
      ...shape,
      diameterMillimetres,
    })),
    angle('First pixel', shape.firstDegrees, (firstDegrees) => ({ ...shape, firstDegrees })),
    {
      label: 'Flattened to',
      unit: '%',
      min: 0,
      max: 100,
      step: 5,
      value: shape.flattening * 100,
      with: (percent) => ({ ...shape, flattening: percent / 100 }),
    },
  ],

  arc: (shape) => [
    ...centred(shape, (centre) => ({ ...shape, centre })),
    length('Radius', shape.radiusMillimetres, 10_000, (radiusMillimetres) => ({
      ...shape,
      radiusMillimetres,
    })),
    angle('From', shape.firstDegrees, (firstDegrees) => ({ ...shape, firstDegrees })),
    angle('To', shape.lastDegrees, (lastDegrees) => ({ ...shape, lastDegrees })),
  ],

  grid: (shape) => [
    ...begins(shape, (start) => ({ ...shape, start })),
    length('Row pitch', shape.rowPitchMillimetres ?? shape.pitchMillimetres, 1000, (rowPitchMillimetres) => ({
      ...shape,
      rowPitchMillimetres,
    })),
    angle('Direction', shape.directionDegrees, (directionDegrees) => ({ ...shape, directionDegrees })),
  ],

  path: (shape) => [...begins(shape, (start) => moveNode(shape, 0, start))],

  // Each pixel has its own numbers: see `PixelRows`.
  points: () => [],
};

function begins(
  { start: [x, y] }: Pick<ShapeOf<'straight' | 'grid'>, 'start'>,
  at: (start: [number, number]) => Shape,
): ShapeField[] {
  return [spot('Starts across', x, (to) => at([to, y])), spot('Starts up', y, (to) => at([x, to]))];
}

function centred(
  { centre: [x, y] }: Pick<ShapeOf<'ring' | 'arc'>, 'centre'>,
  at: (centre: [number, number]) => Shape,
): ShapeField[] {
  return [spot('Middle across', x, (to) => at([to, y])), spot('Middle up', y, (to) => at([x, to]))];
}
