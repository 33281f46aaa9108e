/** What needs two places of the file to be judged. The schema has checked each value by itself before. */
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
import type { Findings } from './findings.ts';
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
