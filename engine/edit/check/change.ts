/**
 * Judges an edited piece by what the edit has touched. Every rule between parts of a piece says what it
 * sees; where two pieces look the same to it, what held for the one holds for the other. Single values
 * need no second look: an edit brings in none that the schema has not passed (`edit.ts`, `perform.ts`).
 */
import type { Diagnostic } from '../../diagnostic.ts';
import { pixelCount } from '../../layout/shapes.ts';
import { checkClips } from '../../piece/checks/clips.ts';
import { checkControls } from '../../piece/checks/controls.ts';
import { checkLooks } from '../../piece/checks/looks.ts';
import { checkOutput } from '../../piece/checks/output.ts';
import { checkPatterns } from '../../piece/checks/patterns.ts';
import { checkPins } from '../../piece/checks/pins.ts';
import { checkRuns } from '../../piece/checks/runs.ts';
import { checkSupply } from '../../piece/checks/supply.ts';
import { checkZones } from '../../piece/checks/zones.ts';
import { Findings } from '../../piece/findings.ts';
import type { Piece } from '../../piece/schema.ts';
import { checkLists } from './lists.ts';
import { checkSize } from './size.ts';

interface Rule {
  readonly check: (piece: Piece, findings: Findings) => void;
  /** Compared one by one: by identity, or item by item where both are lists. */
  readonly sees: (piece: Piece) => readonly unknown[];
}

/** Those of `piece/validate.ts`, in its order; but names, as `plain/act.ts` lets none in that is taken. */
const rules: readonly Rule[] = [
  { check: checkRuns, sees: (piece) => [ground(piece)] },
  { check: checkZones, sees: (piece) => [piece.zones, ground(piece)] },
  { check: checkPatterns, sees: ({ patterns }) => [patterns] },
  { check: checkLooks, sees: ({ looks, controls }) => [looks, controls] },
  {
    check: checkClips,
    sees: (piece) => [piece.looks, piece.patterns, piece.zones, ground(piece)],
  },
  {
    check: checkPins,
    sees: ({ board, lines, controls }) => [board, controls, ...lines.map(({ pin }) => pin)],
  },
  { check: checkControls, sees: ({ controls }) => [controls] },
  { check: checkOutput, sees: ({ output, lines }) => [output, ...lines.map(({ part }) => part)] },
  {
    check: checkSupply,
    sees: (piece) => [piece.board, piece.supply, ...piece.lines.map(({ part }) => part), ground(piece)],
  },
];

const grounds = new WeakMap<Piece['lines'], readonly unknown[]>();

/** All of the runs but where they lie: which pixels there are, and which can light up. */
function ground({ lines }: Piece): readonly unknown[] {
  const known = grounds.get(lines);
  if (known !== undefined) return known;
  const seen = lines.flatMap(({ runs }) =>
    runs.flatMap(({ name, flat, worn, removed, hidden }) => [
      name,
      pixelCount(flat),
      worn && pixelCount(worn),
      removed,
      hidden,
    ]),
  );
  grounds.set(lines, seen);
  return seen;
}

/** What is wrong with a piece that was made from a sound one. Warnings are left to `checkPiece`. */
export function faultsOfChange(before: Piece, after: Piece): readonly Diagnostic[] {
  const findings = new Findings();
  checkLists(after, findings);
  checkSize(after, findings);
  if (findings.hasErrors) return findings.diagnostics;
  for (const { check, sees } of rules) {
    if (!alike(sees(before), sees(after))) check(after, findings);
  }
  return findings.hasErrors ? findings.diagnostics.filter(({ severity }) => severity === 'error') : [];
}

function alike(a: readonly unknown[], b: readonly unknown[]): boolean {
  return (
    a.length === b.length &&
    a.every((value, i) => {
      const other = b[i];
      return value === other || (Array.isArray(value) && Array.isArray(other) && alike(value, other));
    })
  );
}
