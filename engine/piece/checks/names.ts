/** Names that must tell things apart do so: after NFC, and upper case is not lower case. */
import type { Findings } from '../findings.ts';
import type { Piece } from '../schema.ts';
import { clipped } from '../wording.ts';

interface Named {
  readonly name: string;
  readonly path: string;
}

export function checkNames(piece: Piece, findings: Findings): void {
  const runs = piece.lines.flatMap((line, l) => named(line.runs, `lines[${l}].runs`));
  const zones = named(piece.zones, 'zones');
  // A run is a zone as well, and `all` is the zone of everything.
  reportTwice([{ name: 'all', path: '' }, ...runs, ...zones], 'zone or run', findings);
  reportTwice(named(piece.patterns, 'patterns'), 'pattern', findings);
  reportTwice(named(piece.looks, 'looks'), 'look', findings);
  reportTwice(named(piece.controls.buttons, 'controls.buttons'), 'button', findings);
}

function named(things: readonly { readonly name: string }[], path: string): Named[] {
  return things.map(({ name }, i) => ({ name, path: `${path}[${i}].name` }));
}

function reportTwice(things: readonly Named[], kind: string, findings: Findings): void {
  const first = new Map<string, string>();
  for (const { name, path } of things) {
    const before = first.get(name);
    if (before === undefined) {
      first.set(name, path);
      continue;
    }
    const message =
      before === ''
        ? `Every piece has a zone "${name}" of its own.`
        : `There are two of the name "${clipped(name)}".`;
    findings.error('name-twice', path, message, `Choose another name for this ${kind}.`);
  }
}
