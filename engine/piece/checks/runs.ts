/** Runs: how many pixels there are, and whether what is said of single ones concerns the run at all. */
import { pixelCount } from '../../layout/shapes.ts';
import type { Findings } from '../findings.ts';
import { limits } from '../limits.ts';
import type { Piece, Run } from '../schema.ts';

export function checkRuns(piece: Piece, findings: Findings): void {
  const runs = piece.lines.flatMap((line) => line.runs);
  const total = runs.reduce((sum, run) => sum + pixelCount(run.flat), 0);
  if (total > limits.pixels) {
    const message = `The runs have ${total} pixels together, but a piece has at most ${limits.pixels}.`;
    findings.error('too-many-pixels', 'lines', message, 'Shorten runs, or split the piece.');
  } else if (runs.every(isDark)) {
    findings.error(
      'no-pixels',
      'lines',
      'No pixel of the piece can light up.',
      'Leave some neither removed nor hidden.',
    );
  }
  for (const [l, line] of piece.lines.entries()) {
    for (const [r, run] of line.runs.entries()) checkRun(run, `lines[${l}].runs[${r}]`, findings);
  }
}

function checkRun(run: Run, path: string, findings: Findings): void {
  const count = pixelCount(run.flat);
  const wornCount = run.worn === undefined ? count : pixelCount(run.worn);
  if (wornCount !== count) {
    const message = `The worn shape has ${wornCount} pixels, the flat one ${count}.`;
    findings.error(
      'worn-count',
      `${path}.worn`,
      message,
      'Give both the same number; they are the same pixels.',
    );
  }
  checkPositions(run.removed, count, `${path}.removed`, findings);
  checkPositions(run.hidden, count, `${path}.hidden`, findings);
  const removed = new Set(run.removed);
  for (const [i, position] of run.hidden.entries()) {
    if (!removed.has(position)) continue;
    const message = `Position ${position} is removed and hidden at once.`;
    findings.error(
      'position-twice',
      `${path}.hidden[${i}]`,
      message,
      'What is cut out need not be hidden; keep one.',
    );
  }
}

function checkPositions(positions: readonly number[], count: number, path: string, findings: Findings): void {
  const seen = new Set<number>();
  for (const [i, position] of positions.entries()) {
    if (position >= count) {
      const message = `Position ${position} lies behind the end of the run.`;
      findings.error('position-outside', `${path}[${i}]`, message, `Positions go from 0 to ${count - 1}.`);
    } else if (seen.has(position)) {
      findings.error(
        'position-twice',
        `${path}[${i}]`,
        `Position ${position} is named twice.`,
        'Keep one of the two.',
      );
    }
    seen.add(position);
  }
}

/** Whether no pixel of the run can light up. Faulty positions are reported on their own. */
export function isDark(run: Run): boolean {
  return new Set([...run.removed, ...run.hidden]).size >= pixelCount(run.flat);
}
