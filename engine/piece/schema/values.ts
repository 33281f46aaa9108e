/** Values that stand in many places of a piece. */
import { limits } from '../limits.ts';
import type { RuleName } from '../rules.ts';
import { z } from './zod.ts';

/** What `issues.ts` reads as the message of an issue: the rule that was broken. */
export const rule = (name: RuleName) => ({ error: name });

/** Control characters, lone surrogates, line separators, direction marks: what could leave a comment or a string. */
const unprintable = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\u061c\u200e\u200f\u202a-\u202e\u2066-\u206f]/u;

/** Forty characters of two units, each with a few marks on it; what is longer is not even normalised. */
const longestNameUnits = 400;

export const name = z
  .string()
  .max(longestNameUnits, { ...rule('name-length'), abort: true })
  .normalize('NFC')
  .refine((text) => text !== '' && [...text].length <= 40, rule('name-length'))
  .refine((text) => !unprintable.test(text), rule('name-characters'))
  .refine((text) => text.trim() === text, rule('name-spaces'))
  .meta({ id: 'name', description: '1 to 40 characters, compared after NFC normalisation.' });

export const colour = z
  .string()
  .regex(/^#[0-9a-fA-F]{6}$/, rule('colour-form'))
  .meta({ id: 'colour', description: 'Red, green and blue as CSS writes them, #rrggbb.' });

export const byte = z.int().min(0).max(255);
export const pin = z.int().min(0).max(64);
export const lookTime = z.int().min(0).max(limits.lookMilliseconds);
export const lookLength = z.int().min(20).max(limits.lookMilliseconds);
