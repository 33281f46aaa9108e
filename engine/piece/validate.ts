/** What needs two places of the file to be judged. The schema has checked each value by itself before. */
import type { Findings } from './findings.ts';
import type { Piece } from './schema.ts';

export function validate(_piece: Piece, _findings: Findings): void {}
