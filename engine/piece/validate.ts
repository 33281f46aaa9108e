/** What needs two places of the file to be judged. The schema has checked each value by itself before. */

import type { Checked } from '../diagnostic.ts';
import { checkClips } from './checks/clips.ts';
import { checkControls } from './checks/controls.ts';
import { checkLooks } from './checks/looks.ts';
import { checkNames } from './checks/names.ts';
import { checkOutput } from './checks/output.ts';
import { checkPatterns } from './checks/patterns.ts';
import { checkPins } from './checks/pins.ts';
import { checkRuns } from './checks/runs.ts';
import { checkSupply } from './checks/supply.ts';
import { checkZones } from './checks/zones.ts';
import { Findings } from './findings.ts';
import type { Piece } from './schema.ts';

const checks: readonly ((piece: Piece, findings: Findings) => void)[] = [
  checkNames,
  checkRuns,
  checkZones,
  checkPatterns,
  checkLooks,
  checkClips,
  checkPins,
  checkControls,
  checkOutput,
  checkSupply,
];

/** Adds all that is wrong between the parts of a piece, and what is allowed but rarely meant. */
export function validate(piece: Piece, findings: Findings): void {
  for (const check of checks) check(piece, findings);
}

/** What `checkPiece` says of a piece whose single values are known to be sound, as edits leave them. */
export function checkWhole(piece: Piece): Checked<Piece> {
  const findings = new Findings();
  validate(piece, findings);
  const { diagnostics } = findings;
  return findings.hasErrors ? { diagnostics } : { value: piece, diagnostics };
}
