/** Zones: the runs they name exist, their ranges lie inside, and every zone can be made. */
import { prepareLayout } from '../../layout/prepare.ts';
import { pixelCount } from '../../layout/shapes.ts';
import type { Findings } from '../findings.ts';
import { meantInstead } from '../nearest.ts';
import type { Piece, ZoneSource } from '../schema.ts';
import { clipped } from '../wording.ts';
import { isDark } from './runs.ts';

export function checkZones(piece: Piece, findings: Findings): void {
  const counts = new Map(
    piece.lines.flatMap((line) => line.runs.map((run) => [run.name, pixelCount(run.flat)])),
  );
  for (const [i, { source }] of piece.zones.entries()) {
    checkSource(source, counts, `zones[${i}].source`, findings);
  }
  // The layout is built only on sound ground: its own diagnostics then name what no single source shows.
  if (!findings.hasErrors) findings.append(prepareLayout(piece).diagnostics);
}

function checkSource(
  source: ZoneSource,
  counts: ReadonlyMap<string, number>,
  path: string,
  findings: Findings,
): void {
  if (source.kind === 'run' || source.kind === 'range') {
    const count = counts.get(source.run);
    if (count === undefined) {
      const message = `There is no run "${clipped(source.run)}".`;
      findings.error('run-unknown', `${path}.run`, message, () => meantInstead(source.run, counts.keys()));
    } else if (source.kind === 'range') {
      for (const end of ['first', 'last'] as const) {
        if (source[end] < count) continue;
        const message = `Position ${source[end]} lies behind the end of the run.`;
        findings.error('position-outside', `${path}.${end}`, message, `Positions go from 0 to ${count - 1}.`);
      }
    }
  } else if (source.kind === 'stepped' || source.kind === 'reversed') {
    checkSource(source.of, counts, `${path}.of`, findings);
  } else if (source.kind === 'union' || source.kind === 'twins') {
    for (const [i, part] of source.of.entries()) checkSource(part, counts, `${path}.of[${i}]`, findings);
  }
}

/** Every zone that a clip may name, and whether it has a pixel to light. */
export function zonesKnownTo(piece: Piece): Map<string, boolean> {
  const runs = piece.lines.flatMap((line) => line.runs);
  return new Map([
    ['all', true],
    ...runs.map((run) => [run.name, !isDark(run)] as const),
    ...piece.zones.map(({ name }) => [name, true] as const),
  ]);
}
