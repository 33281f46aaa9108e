/**
 * The piece file, version 2, as a zod schema. Lengths are millimetres with y up, angles are degrees
 * counter-clockwise from the x axis, times are milliseconds, colours are CSS hex `#rrggbb`.
 *
 * The schema checks what one value can show by itself; what needs two places of the file (a clip's
 * zone exists, names are unique, clips of a track do not overlap) is checked by `validate.ts`.
 */
import { chipNames } from '../parts/chips.ts';
import { limits } from './limits.ts';
import { type action, type button, controls } from './schema/controls.ts';
import { line, type run, zone } from './schema/layout.ts';
import { type clip, look, type parameterValue, type track } from './schema/look.ts';
import { type gradient, type parameter, pattern } from './schema/pattern.ts';
import { output, supply } from './schema/power.ts';
import type { shape } from './schema/shape.ts';
import { name } from './schema/values.ts';
import { z } from './schema/zod.ts';

export const pieceSchema = z.strictObject({
  version: z.literal(2),
  name,
  board: z.enum(chipNames),
  tickMilliseconds: z.int().min(5).max(1000).default(20),
  lines: z.array(line).min(1).max(1),
  zones: z.array(zone).max(limits.zones).default([]),
  patterns: z.array(pattern).max(limits.patterns).default([]),
  looks: z.array(look).min(1).max(limits.looks),
  controls: controls.prefault({}),
  output: output.prefault({}),
  supply: supply.prefault({}),
});

export type Piece = z.output<typeof pieceSchema>;
/** What may stand in a file: fields with defaults may be left out. */
export type PieceInput = z.input<typeof pieceSchema>;
export type Shape = z.output<typeof shape>;
export type Run = z.output<typeof run>;
export type Line = z.output<typeof line>;
export type NamedZone = z.output<typeof zone>;
export type PatternDefinition = z.output<typeof pattern>;
export type ParameterDescription = z.output<typeof parameter>;
export type ParameterValue = z.output<typeof parameterValue>;
export type GradientStops = z.output<typeof gradient>;
export type Clip = z.output<typeof clip>;
export type Track = z.output<typeof track>;
export type Look = z.output<typeof look>;
export type Action = z.output<typeof action>;
export type Button = z.output<typeof button>;
export type Controls = z.output<typeof controls>;
export type Output = z.output<typeof output>;
export type Supply = z.output<typeof supply>;
export type { ZoneSource } from './schema/layout.ts';
