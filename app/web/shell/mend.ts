/** Where a warning can be mended. */
import type { Diagnostic } from '../../../engine/diagnostic.ts';
import type { ClipPosition } from '../worker/protocol.ts';
import type { BenchName } from './benches.ts';

export type MendingPlace =
  | { readonly kind: 'supply' }
  | { readonly kind: 'look'; readonly look: number; readonly clip: ClipPosition | null }
  | { readonly kind: 'bench'; readonly bench: BenchName };

/** What the power report warns of has to do with the supply, and carries no path. */
const aboutSupply = new Set([
  'limit-below-rest',
  'limiter-active',
  'peak-near-limit',
  'power-bank-may-switch-off',
  'keep-alive-out-of-reach',
]);

/** By the first word of a path. */
const benchOf: Readonly<Record<string, BenchName>> = {
  board: 'firmware',
  lines: 'place',
  zones: 'place',
  controls: 'compose',
  patterns: 'compose',
};

export const mendWords: Record<MendingPlace['kind'], string> = {
  supply: 'See to the supply',
  look: 'Go to the look',
  bench: 'Go there',
};

/** Null where the page has no place to mend it. */
export function mendingPlace({ code, path }: Pick<Diagnostic, 'code' | 'path'>): MendingPlace | null {
  if (aboutSupply.has(code) || path?.startsWith('supply') === true) return { kind: 'supply' };
  const [, look, track, clip] =
    /^looks\[(\d+)\](?:\.tracks\[(\d+)\](?:\.clips\[(\d+)\])?)?/.exec(path ?? '')?.map(Number) ?? [];
  if (look !== undefined) {
    const at = track !== undefined && clip !== undefined && clip >= 0 ? { look, track, clip } : null;
    return { kind: 'look', look, clip: at };
  }
  const bench = benchOf[/^\w+/.exec(path ?? '')?.[0] ?? ''];
  return bench === undefined ? null : { kind: 'bench', bench };
}
