/** Both sides of a garment: runs mirrored, and a zone on which both play the same. */
import type { Piece, ZoneSource } from '../../piece/schema.ts';
import { type Edit, together } from '../edit.ts';
import type { Axis } from '../kinds/runs.ts';
import { namesOf } from '../references.ts';
import { freeName } from './free-name.ts';

/**
 * Adds a mirrored duplicate of each run behind it on its line, and one zone of twins: the runs on one side,
 * one after the other, and their duplicates on the other. Flat and worn places are mirrored at the same axis.
 */
export function mirroredTwins(piece: Piece, runs: readonly string[], axis: Axis): Edit {
  const taken = [...namesOf(piece, 'zone')];
  const named = (wanted: string) => {
    const name = freeName(wanted, taken);
    taken.push(name);
    return name;
  };
  const pairs = runs.map((run) => ({ run, twin: named(run) }));
  const worn = pairs.filter(({ run }) => isWorn(piece, run)).map(({ twin }) => twin);
  const twins = pairs.map(({ twin }) => twin);
  const zone = {
    name: named(`${runs[0]} twins`),
    source: { kind: 'twins', of: [sourceOf(runs), sourceOf(twins)] } satisfies ZoneSource,
  };
  const edits: Edit[] = [
    ...pairs.map(({ run, twin }): Edit => ({ kind: 'duplicate-run', run, name: twin })),
    { kind: 'mirror-runs', side: 'flat', runs: twins, axis },
    { kind: 'add-zone', index: piece.zones.length, zone },
  ];
  if (worn.length > 0) edits.push({ kind: 'mirror-runs', side: 'worn', runs: worn, axis });
  return together(runs.length === 1 ? `Twin of run ${runs[0]}` : `Twins of ${runs.length} runs`, edits);
}

function isWorn(piece: Piece, name: string): boolean {
  return piece.lines.some(({ runs }) => runs.some((run) => run.name === name && run.worn !== undefined));
}

function sourceOf(runs: readonly string[]): ZoneSource {
  const parts = runs.map((run): ZoneSource => ({ kind: 'run', run }));
  return parts.length === 1 ? parts[0]! : { kind: 'union', of: parts };
}
