/** Presses with bounce on the chip against the same presses without it in the engine. */
import { expect } from 'vitest';
import type { Press } from '../../codegen/rehearse/bounce.ts';
import type { RehearsalReport } from '../../codegen/rehearse/report.ts';
import { parseScript, press } from '../../engine/controls/press.ts';
import type { Score } from '../../engine/look/score.ts';

/** 7 presses of 40 to 100 ms, then 3 holds; in step with nothing. */
export const sevenAndThree: readonly Press[] = [
  ...[400, 1_030, 1_777, 2_450, 3_111, 3_800, 4_405].map((atMilliseconds) => ({
    atMilliseconds,
    lengthMilliseconds: 40 + (atMilliseconds % 7) * 10,
  })),
  ...[5_000, 6_200, 7_333].map((atMilliseconds) => ({ atMilliseconds, lengthMilliseconds: 700 })),
];

/** The same events in the same order, each within a tick of where the engine has it. */
export function expectTrace(
  { trace, milliseconds }: RehearsalReport,
  score: Score,
  presses: readonly Press[],
): void {
  const expected = press(score, scriptOf(score, presses, milliseconds));
  const told = (events: RehearsalReport['trace']) => events.map(({ kind, value }) => `${kind} ${value}`);
  expect(told(trace)).toEqual(told(expected));
  const apart = trace.map(({ ms }, i) => Math.abs(ms - expected[i]!.ms));
  expect(Math.max(...apart)).toBeLessThanOrEqual(score.piece.tickMilliseconds);
}

function scriptOf(score: Score, presses: readonly Press[], end: number) {
  const names = score.piece.controls.buttons.map(({ name }) => name);
  const steps = presses
    .flatMap(({ atMilliseconds: at, lengthMilliseconds, button = 0 }) => [
      { at, does: `down ${names[button]}` },
      { at: at + lengthMilliseconds, does: `up ${names[button]}` },
    ])
    .sort((a, b) => a.at - b.at);
  const text = [...steps.map(({ at, does }) => `${at} ${does}`), `${end} end`].join(';');
  const { value, diagnostics } = parseScript(text, score.piece);
  expect(diagnostics).toEqual([]);
  return value!;
}
