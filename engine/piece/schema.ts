/**
 * The piece file, version 1, as a zod schema. Lengths are millimetres with y up, angles are degrees
 * counter-clockwise from the x axis, times are milliseconds, colours are CSS hex `#rrggbb`.
 *
 * The schema checks what one value can show by itself; what needs two places of the file (a clip's
 * zone exists, names are unique, clips of a track do not overlap) is checked by `validate.ts`.
 */
import { z } from 'zod';
import { blendNames } from '../look/blend.ts';
import { easingNames } from '../look/easing.ts';
import { chipNames } from '../parts/chips.ts';
import { pixelPartNames } from '../parts/pixels.ts';
import type { RuleName } from './rules.ts';

// The page forbids generated code, and probing for it would already be reported there.
z.config({ jitless: true });

export const limits = {
  pixels: 2000,
  looks: 64,
  tracksPerLook: 64,
  clips: 1024,
  zones: 256,
  patterns: 64,
  parametersPerPattern: 32,
  keysPerParameter: 64,
  gradientStops: 16,
  zoneNesting: 8,
  lookMilliseconds: 9 * 3600 * 1000,
  fadeMilliseconds: 3600 * 1000,
  patternBytes: 8192,
} as const;

/** What `issues.ts` reads as the message of an issue: the rule that was broken. */
const rule = (name: RuleName) => ({ error: name });

/** Control characters, line separators, lone surrogates and direction marks: nothing that could leave a comment or string. */
const unprintable = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u061c\u200e\u200f\u202a-\u202e\u2066-\u206f]/u;

/** Forty characters, each of two units and followed by a few marks; longer text is not even normalised. */
const longestNameUnits = 400;

/** 1 to 40 characters (code points), compared after NFC normalisation. */
export const nameSchema = z
  .string()
  .max(longestNameUnits, { ...rule('name-length'), abort: true })
  .normalize('NFC')
  .refine((text) => text !== '' && [...text].length <= 40, rule('name-length'))
  .refine((text) => !unprintable.test(text), rule('name-characters'))
  .refine((text) => text.trim() === text, rule('name-spaces'));

const millimetres = z.number().min(-100_000).max(100_000);
const degrees = z.number().min(-3600).max(3600);
const count = z.int().min(1).max(limits.pixels);
const point = z.tuple([millimetres, millimetres]);
export const colourSchema = z.string().regex(/^#[0-9a-f]{6}$/i, rule('colour-form'));
const byte = z.int().min(0).max(255);

export const shapeSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('straight'),
    count,
    /** Centre of the first pixel. */
    start: point,
    pitchMillimetres: z.number().gt(0).max(1000),
    directionDegrees: degrees.default(0),
  }),
  z.strictObject({
    kind: z.literal('ring'),
    count,
    centre: point,
    diameterMillimetres: z.number().gt(0).max(20_000),
    firstDegrees: degrees.default(90),
    clockwise: z.boolean().default(true),
    /** Seen at a slant, a ring is an ellipse: height over width. */
    flattening: z.number().min(0).max(1).default(1),
  }),
  z.strictObject({
    kind: z.literal('arc'),
    count,
    centre: point,
    radiusMillimetres: z.number().gt(0).max(10_000),
    firstDegrees: degrees,
    lastDegrees: degrees,
  }),
  z.strictObject({
    kind: z.literal('grid'),
    columns: count,
    rows: count,
    /** Centre of pixel 0. Rows run along the direction, the next row lies to the right of it. */
    start: point,
    pitchMillimetres: z.number().gt(0).max(1000),
    rowPitchMillimetres: z.number().gt(0).max(1000).optional(),
    directionDegrees: degrees.default(0),
    /** `rows`: every row in the same direction. `alternating`: every second row comes back. */
    order: z.enum(['rows', 'alternating']).default('rows'),
  }),
  z.strictObject({ kind: z.literal('points'), points: z.array(point).min(1).max(limits.pixels) }),
]);

const addresses = z
  .array(
    z
      .int()
      .min(0)
      .max(limits.pixels - 1),
  )
  .max(limits.pixels)
  .default([]);

export const runSchema = z.strictObject({
  name: nameSchema,
  /** On the bench. */
  flat: shapeSchema,
  /** As seen on the body; the flat place where it is left out. Same number of pixels. */
  worn: shapeSchema.optional(),
  /** Positions in the run that are cut out: they have no address. */
  removed: addresses,
  /** Positions that are wired but stay dark, such as a repeater in a seam. */
  hidden: addresses,
});

export const lineSchema = z.strictObject({
  pin: z.int().min(0).max(64),
  part: z.enum(pixelPartNames),
  runs: z.array(runSchema).min(1).max(256),
});

export type ZoneSource =
  | { kind: 'all' }
  | { kind: 'run'; run: string }
  | { kind: 'range'; run: string; first: number; last: number }
  | { kind: 'stepped'; of: ZoneSource; every: number; offset: number }
  | { kind: 'reversed'; of: ZoneSource }
  | { kind: 'union'; of: ZoneSource[] }
  | { kind: 'twins'; of: ZoneSource[] };

/** Nesting is bounded before recursion starts, so a hostile file cannot exhaust the stack. */
export const zoneSourceSchema = zoneSourceOfDepth(limits.zoneNesting);

function zoneSourceOfDepth(depth: number): z.ZodType<ZoneSource> {
  const leaves = [
    z.strictObject({ kind: z.literal('all') }),
    z.strictObject({ kind: z.literal('run'), run: nameSchema }),
    /** Positions in the run, both ends included; `first` may be the larger one. */
    z.strictObject({
      kind: z.literal('range'),
      run: nameSchema,
      first: z
        .int()
        .min(0)
        .max(limits.pixels - 1),
      last: z
        .int()
        .min(0)
        .max(limits.pixels - 1),
    }),
  ] as const;
  if (depth <= 1) return z.discriminatedUnion('kind', leaves) as unknown as z.ZodType<ZoneSource>;
  const inner = zoneSourceOfDepth(depth - 1);
  return z.discriminatedUnion('kind', [
    ...leaves,
    z.strictObject({
      kind: z.literal('stepped'),
      of: inner,
      every: z.int().min(1).max(limits.pixels),
      offset: z.int().min(0).max(limits.pixels).default(0),
    }),
    z.strictObject({ kind: z.literal('reversed'), of: inner }),
    /** One after the other: indices go on counting. */
    z.strictObject({ kind: z.literal('union'), of: z.array(inner).min(1).max(256) }),
    /** Side by side: pixels with the same number share an index. */
    z.strictObject({ kind: z.literal('twins'), of: z.array(inner).min(2).max(256) }),
  ]) as unknown as z.ZodType<ZoneSource>;
}

export const zoneSchema = z.strictObject({ name: nameSchema, source: zoneSourceSchema });

/** Ranges stay within +-16383, so that the difference of two values fits 16.16. */
const parameterNumber = z.number().min(-16383).max(16383);

export const gradientSchema = z
  .array(z.strictObject({ at: z.number().min(0).max(1), colour: colourSchema }))
  .min(1)
  .max(limits.gradientStops)
  .refine(
    (stops) => stops.every((stop, i) => i === 0 || stop.at >= stops[i - 1]!.at),
    rule('gradient-order'),
  );

const described = {
  /** The identifier in the source; for a gradient, `tide` stands for the function `gradient_tide`. */
  name: z.string().regex(/^[a-zA-Z][a-zA-Z0-9_]{0,31}$/, rule('parameter-identifier')),
  label: nameSchema,
};

export const parameterSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    kind: z.literal('number'),
    ...described,
    min: parameterNumber,
    max: parameterNumber,
    default: parameterNumber,
    unit: z.string().max(12).optional(),
  }),
  z.strictObject({
    kind: z.literal('whole'),
    ...described,
    min: parameterNumber.int(),
    max: parameterNumber.int(),
    default: parameterNumber.int(),
    unit: z.string().max(12).optional(),
  }),
  z.strictObject({ kind: z.literal('yes-no'), ...described, default: z.boolean() }),
  z.strictObject({ kind: z.literal('colour'), ...described, default: colourSchema }),
  z.strictObject({ kind: z.literal('gradient'), ...described, default: gradientSchema }),
]);

export const patternSchema = z.strictObject({
  name: nameSchema,
  source: z.string().max(limits.patternBytes),
  parameters: z.array(parameterSchema).max(limits.parametersPerPattern).default([]),
});

const easingSchema = z.union([
  z.enum(easingNames),
  /** CSS `cubic-bezier(x1, y1, x2, y2)`. */
  z.tuple([
    z.number().min(0).max(1),
    z.number().min(-4).max(4),
    z.number().min(0).max(1),
    z.number().min(-4).max(4),
  ]),
]);

const lookTime = z.int().min(0).max(limits.lookMilliseconds);

const keyed = <T extends z.ZodType>(value: T) =>
  z.strictObject({
    keys: z
      .array(z.strictObject({ atMilliseconds: lookTime, value, easing: easingSchema.default('linear') }))
      .min(1)
      .max(limits.keysPerParameter)
      .refine(
        (keys) => keys.every((key, i) => i === 0 || key.atMilliseconds > keys[i - 1]!.atMilliseconds),
        rule('keys-order'),
      ),
  });

export const parameterValueSchema = z.union([
  parameterNumber,
  z.boolean(),
  colourSchema,
  gradientSchema,
  keyed(parameterNumber),
  keyed(colourSchema),
]);

const fade = z.int().min(0).max(limits.fadeMilliseconds).default(0);

export const clipSchema = z.strictObject({
  /** A library pattern with its revision (`tide/1`), or the name of a pattern of this piece. */
  pattern: nameSchema,
  zone: nameSchema.default('all'),
  startMilliseconds: lookTime.default(0),
  lengthMilliseconds: z.int().min(20).max(limits.lookMilliseconds),
  /** Counts from the entry of the look, over all its loops; it then has no end and no fade-out. */
  endless: z.boolean().default(false),
  opacity: byte.default(255),
  blend: z.enum(blendNames).default('normal'),
  fadeInMilliseconds: fade,
  fadeOutMilliseconds: fade,
  seed: z.int().min(0).max(65535).default(0),
  parameters: z.record(z.string(), parameterValueSchema).default({}),
});

export const trackSchema = z.strictObject({
  name: nameSchema.optional(),
  clips: z.array(clipSchema).max(limits.clips),
});

export const lookSchema = z.strictObject({
  name: nameSchema,
  lengthMilliseconds: z.int().min(20).max(limits.lookMilliseconds),
  /** The look before it dissolves into this one over this time. */
  dissolveMilliseconds: z.int().min(0).max(60_000).default(0),
  /** Leave by itself, this long after entry; `to` left out means the next look. */
  moveOn: z
    .strictObject({
      afterMilliseconds: z.int().min(20).max(limits.lookMilliseconds),
      to: nameSchema.optional(),
    })
    .optional(),
  /** The first track lies at the bottom. */
  tracks: z.array(trackSchema).max(limits.tracksPerLook),
});

export const actionSchema = z.discriminatedUnion('do', [
  z.strictObject({ do: z.literal('next-look') }),
  z.strictObject({ do: z.literal('previous-look') }),
  z.strictObject({ do: z.literal('go-to-look'), look: nameSchema }),
  z.strictObject({ do: z.literal('brightness-step') }),
  z.strictObject({ do: z.literal('blackout') }),
  z.strictObject({ do: z.literal('pause') }),
]);

export const buttonSchema = z.strictObject({
  name: nameSchema,
  pin: z.int().min(0).max(64),
  press: actionSchema.optional(),
  hold: actionSchema.optional(),
  double: actionSchema.optional(),
});

export const controlsSchema = z.strictObject({
  debounceMilliseconds: z.int().min(1).max(250).default(20),
  holdMilliseconds: z.int().min(100).max(5000).default(600),
  doubleMilliseconds: z.int().min(50).max(2000).default(300),
  /** Held longer than this, a button is caught in a bag and does nothing more. */
  caughtMilliseconds: z.int().min(1000).max(60_000).default(8000),
  brightnessSteps: z.array(z.int().min(1).max(255)).min(1).max(16).default([32, 64, 128, 255]),
  buttons: z.array(buttonSchema).max(8).default([]),
});

export const outputSchema = z.strictObject({
  startBrightness: byte.default(64),
  /** sRGB by IEC 61966-2-1, CIE lightness, or a plain power. */
  curve: z
    .union([z.enum(['srgb', 'lightness']), z.strictObject({ power: z.number().min(1).max(4) })])
    .default('srgb'),
  /** Red, green, blue (and white) of the part against each other, 256 = full. */
  balance: z.array(z.int().min(0).max(256)).min(3).max(4).optional(),
});

export const supplySchema = z.strictObject({
  limitMilliamps: z.int().min(1).max(20_000).default(400),
  volts: z.number().min(1).max(24).default(5),
  /** A power bank switches off below its threshold; a frame that would draw less is lifted. 0: no floor. */
  keepAliveMilliamps: z.int().min(0).max(1000).default(0),
});

export const pieceSchema = z.strictObject({
  version: z.literal(1),
  name: nameSchema,
  board: z.enum(chipNames),
  tickMilliseconds: z.int().min(5).max(1000).default(20),
  lines: z.array(lineSchema).min(1).max(1),
  zones: z.array(zoneSchema).max(limits.zones).default([]),
  patterns: z.array(patternSchema).max(limits.patterns).default([]),
  looks: z.array(lookSchema).min(1).max(limits.looks),
  controls: controlsSchema.prefault({}),
  output: outputSchema.prefault({}),
  supply: supplySchema.prefault({}),
});

export type Piece = z.output<typeof pieceSchema>;
/** What may stand in a file: fields with defaults may be left out. */
export type PieceInput = z.input<typeof pieceSchema>;
export type Shape = z.output<typeof shapeSchema>;
export type Run = z.output<typeof runSchema>;
export type Line = z.output<typeof lineSchema>;
export type NamedZone = z.output<typeof zoneSchema>;
export type PatternDefinition = z.output<typeof patternSchema>;
export type ParameterDescription = z.output<typeof parameterSchema>;
export type ParameterValue = z.output<typeof parameterValueSchema>;
export type GradientStops = z.output<typeof gradientSchema>;
export type Clip = z.output<typeof clipSchema>;
export type Track = z.output<typeof trackSchema>;
export type Look = z.output<typeof lookSchema>;
export type Action = z.output<typeof actionSchema>;
export type Button = z.output<typeof buttonSchema>;
export type Controls = z.output<typeof controlsSchema>;
export type Output = z.output<typeof outputSchema>;
export type Supply = z.output<typeof supplySchema>;
