/** How large a pattern may be: the last size that is allowed, and the first that is not. */
import { describe, expect, test } from 'vitest';
import { compilePattern, mostSourceBytes } from '../../engine/pattern/compile.ts';
import { inOrder, operandsOf } from '../../engine/pattern/ir.ts';
import { mostOperations } from '../../engine/pattern/lower/lower.ts';
import { compiled, drawer, faultsOf, programOf } from '../support/patterns.ts';

const codesOf = (source: string) => compilePattern(source, []).diagnostics.map(({ code }) => code);

describe('G10 bounds', () => {
  test('8,192 bytes of UTF-8', () => {
    const around = 'lowp vec3 light() { return vec3(1.0); } // ';
    const filled = around + 'x'.repeat(mostSourceBytes - around.length);
    expect(mostSourceBytes).toBe(8192);
    expect(codesOf(filled)).toEqual([]);
    expect(codesOf(`${filled}x`)).toEqual(['source-too-long']);
    // An é takes two bytes, a lantern four.
    expect(codesOf(`${filled.slice(0, -1)}é`)).toEqual(['source-too-long']);
    expect(codesOf(`${filled.slice(0, -4)}🏮`)).toEqual([]);
    expect(codesOf(`${filled.slice(0, -3)}🏮`)).toEqual(['source-too-long']);
  });

  const wrapped = (open: string, close: string, depth: number) =>
    `lowp vec3 light() { return vec3(${open.repeat(depth)}along${close.repeat(depth)}); }`;

  test('brackets nest 32 deep', () => {
    // The statement, the result and the argument of vec3 are three levels by themselves.
    expect(codesOf(wrapped('(', ')', 29))).toEqual([]);
    expect(codesOf(wrapped('(', ')', 30))).toEqual(['nested-too-deep']);
  });

  test('calls nest 32 deep', () => {
    expect(codesOf(wrapped('abs(', ')', 29))).toEqual([]);
    expect(codesOf(wrapped('abs(', ')', 30))).toEqual(['nested-too-deep']);
  });

  test('blocks nest 32 deep', () => {
    const blocks = (depth: number) =>
      `lowp vec3 light() { ${'{'.repeat(depth)} float a = 1.0; ${'}'.repeat(depth)} return vec3(1.0); }`;
    expect(codesOf(blocks(30))).toEqual([]);
    expect(codesOf(blocks(32))).toEqual(['nested-too-deep']);
  });

  test('loops make 1,024 turns together', () => {
    const loop = (turns: number) =>
      `lowp vec3 light() { float s = 0.0; for (int i = 0; i < ${turns}; i++) s += 0.001; return vec3(s); }`;
    expect(codesOf(loop(1024))).toEqual([]);
    expect(codesOf(loop(1025))).toEqual(['too-many-turns']);
  });

  test('the turns of nested loops multiply', () => {
    const loops = (turns: number) => `lowp vec3 light() {
  float s = 0.0;
  for (int i = 0; i < 4; i++) { for (int j = 8; j > 0; j--) { for (int k = 0; k < ${turns}; k++) s += 0.001; } }
  return vec3(s);
}`;
    expect(codesOf(loops(32))).toEqual([]);
    expect(codesOf(loops(33))).toEqual(['too-many-turns']);
  });

  test('loops one behind the other do not multiply', () => {
    const source = `lowp vec3 light() { float s = 0.0;
  ${'for (int i = 0; i < 1000; i++) s += 0.001; '.repeat(3)} return vec3(s); }`;
    expect(codesOf(source)).toEqual([]);
  });

  /** Each turn of the loop takes one operation for every statement in it. */
  const running = (turns: number, statements: number) => `lowp vec3 light() {
  int s = pixel;
  for (int i = 0; i < ${turns}; i++) {
${'    s = pixel - s * 3;\n'.repeat(statements)}  }
  return vec3(float(s % 7) * 0.1);
}`;
  const operationsOf = (source: string) =>
    inOrder(compiled({ source, parameters: [] }).levels).filter((node) => operandsOf(node).length > 0).length;

  test('20,000 operations a pixel', () => {
    expect(mostOperations).toBe(20_000);
    const perTurn = (operationsOf(running(101, 10)) - operationsOf(running(100, 10))) / 10;
    expect(perTurn).toBe(2);
    const rest = operationsOf(running(100, 10)) - 2000;
    const fits = Math.floor((20_000 - rest) / 20);
    expect(operationsOf(running(fits, 10))).toBeGreaterThan(19_900);
    expect(codesOf(running(fits + 1, 10))).toEqual(['too-much-work']);
  });

  test('a pattern of the largest size also runs', () => {
    const pattern = compiled({ source: running(999, 10), parameters: [] });
    const zone = { count: 60, seed: 1 };
    const draw = drawer(programOf(pattern, {}, zone));
    const levels = draw({ time: 0, turn: 0, index: 7, placeX: 0, placeY: 0 });
    let s = 7;
    for (let i = 0; i < 9990; i++) s = (7 - Math.imul(s, 3)) | 0;
    expect(levels[0]).toBe(Math.max(0, Math.floor((256 * (s % 7)) / 10)));
  });

  test('too many diagnostics are cut, never thrown', () => {
    expect(faultsOf('@'.repeat(8000)).length).toBeLessThanOrEqual(70);
  });
});
