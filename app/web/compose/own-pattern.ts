/** Edits of patterns that are the piece's own. */
import { type Edit, together } from '../../../engine/edit/edit.ts';
import { freeName } from '../../../engine/edit/offers/free-name.ts';
import { same } from '../../../engine/edit/same.ts';
import type { ParameterDescription, Piece } from '../../../engine/piece/schema.ts';
import { clipAddress, clipAt } from '../session/clip-at.ts';
import type { ClipPosition } from '../worker/protocol.ts';
import type { KnownPattern } from './pattern-of.ts';

/** A pattern as it is written. */
export interface Draft {
  readonly source: string;
  readonly parameters: readonly ParameterDescription[];
}

export function sameDraft(a: Draft, b: Draft): boolean {
  return a.source === b.source && same(a.parameters, b.parameters);
}

/** The clip plays a pattern of the piece's own from now on, a copy of what it played before: `my tide`. */
export function makeOwn(piece: Piece, at: ClipPosition, { title, source, parameters }: KnownPattern): Edit {
  const base = clipAt(piece, at)!.pattern.replace(/\/\d+$/, '');
  const taken = piece.patterns.map((pattern) => pattern.name);
  const name = freeName(`my ${base.replace(/^my /, '')}`, taken);
  return together(`Make ${title} my own`, [
    { kind: 'add-pattern', index: taken.length, pattern: { name, source, parameters: [...parameters] } },
    { kind: 'set-clip', at: clipAddress(piece, at), set: { pattern: name } },
  ]);
}

type Numeric = Extract<ParameterDescription, { kind: 'number' | 'whole' }>;

/** The default comes along where a range leaves it behind. */
export function withBounds(parameter: Numeric): Numeric {
  return { ...parameter, default: Math.min(parameter.max, Math.max(parameter.min, parameter.default)) };
}

/** Another text for a pattern; its descriptions come along where they have changed with it. */
export function rewrite(pattern: string, before: Draft, { source, parameters }: Draft): Edit {
  const described = !same(before.parameters, parameters);
  return {
    kind: 'set-pattern',
    pattern,
    set: { source, ...(described && { parameters: [...parameters] }) },
  };
}
