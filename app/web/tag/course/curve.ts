/** A parameter's course as it is drawn: time runs down, as on the loom, and the value across, as on its dial. */
import type { Course } from '../../../../engine/edit/courses/course.ts';
import { valueOfCourse } from '../../../../engine/edit/courses/course.ts';
import { type KeyedParameter, keyedValue } from '../../../../engine/look/keyframes.ts';
import { type Keyed, keyedParameter } from '../../../../engine/pattern/keyed.ts';
import type { ParameterDescription } from '../../../../engine/piece/schema.ts';
import { niceStep } from '../steps.ts';

export interface Plot {
  /** CSS pixels. */
  readonly width: number;
  readonly height: number;
  readonly spanMs: number;
  readonly min: number;
  readonly max: number;
}

export function yOf({ height, spanMs }: Plot, ms: number): number {
  return (ms / spanMs) * height;
}

export function xOf({ width, min, max }: Plot, value: number): number {
  return max > min ? ((value - min) / (max - min)) * width : 0;
}

export function timeAt({ height, spanMs }: Plot, y: number): number {
  return Math.min(spanMs, Math.max(0, (y / height) * spanMs));
}

export function valueAt({ width, min, max }: Plot, x: number): number {
  return min + Math.min(1, Math.max(0, x / width)) * (max - min);
}

/** A value as a steady hand means it, within the range. */
export function stepped(value: number, step: number, { min, max }: Plot): number {
  const near = Number((Math.round(value / step) * step).toFixed(6));
  return Math.min(max, Math.max(min, near));
}

/** A time as a steady hand means it: no finer than it can point. */
export function steadyTime(ms: number, { spanMs }: Plot): number {
  const step = Math.max(1, niceStep(spanMs));
  return Math.min(spanMs, Math.round(ms / step) * step);
}

export type Moving = Extract<ParameterDescription, { kind: 'number' | 'whole' | 'colour' }>;

const channels = [0, 1, 2] as const;

/** The courses that the engine follows for it: one of a number, three of a colour. */
export function enginesCourses(description: Moving, course: Course): KeyedParameter[] {
  const keyed = valueOfCourse(course) as Keyed;
  // A level is read as a whole number here, before a pattern gets it as a share.
  if (description.kind === 'colour')
    return channels.map((channel) => keyedParameter(description, keyed, 'whole', channel));
  return [keyedParameter(description, keyed, description.kind === 'whole' ? 'whole' : 'mediump', 0)];
}

/** What a number is at a time of the clip, as the chip has it. */
export function numberAt(parameter: KeyedParameter, ms: number): number {
  const value = keyedValue(parameter, Math.floor(ms));
  return parameter.to === 'whole' ? value : value / 65536;
}

/** What a colour is, as the chip mixes it. */
export function colourAt(parameters: readonly KeyedParameter[], ms: number): string {
  const levels = parameters.map((parameter) => keyedValue(parameter, Math.floor(ms)));
  return `#${levels.map((level) => level.toString(16).padStart(2, '0')).join('')}`;
}

export interface Sample {
  readonly ms: number;
  readonly value: number;
}

/** The engine's value at every other half pixel, and on both sides of each key, where a step may be. */
export function samplesOf(parameter: KeyedParameter, plot: Plot): Sample[] {
  const times = new Set<number>([0, plot.spanMs]);
  for (let y = 0; y <= plot.height; y++) times.add(Math.floor(timeAt(plot, y)));
  for (const { atMilliseconds } of parameter.keys) {
    times.add(atMilliseconds);
    if (atMilliseconds > 0) times.add(atMilliseconds - 1);
  }
  return [...times].sort((a, b) => a - b).map((ms) => ({ ms, value: numberAt(parameter, ms) }));
}

/** The samples as an SVG path, to the hundredth of a pixel. */
export function pathOf(samples: readonly Sample[], plot: Plot): string {
  const points = samples.map(({ ms, value }) => `${round(xOf(plot, value))} ${round(yOf(plot, ms))}`);
  return `M${points.join('L')}`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
