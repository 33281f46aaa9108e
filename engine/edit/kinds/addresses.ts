/**
 * How edits say where: by name what has one of its own, by its place in the list what has not.
 * Places count from 0.
 */
import { name } from '../../piece/schema/values.ts';
import { z } from '../../piece/schema/zod.ts';

export const place = z.int().min(0);

export const trackAddress = z.strictObject({ look: name, track: place });
export type TrackAddress = z.output<typeof trackAddress>;

export const clipAddress = z.strictObject({ look: name, track: place, clip: place });
export type ClipAddress = z.output<typeof clipAddress>;
