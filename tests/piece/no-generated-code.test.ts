/** Loading a piece generates no code: the page forbids it, and a stranger's file must have no use for it. */
import { readFileSync } from 'node:fs';
import { afterEach, expect, test, vi } from 'vitest';

afterEach(() => {
  vi.unstubAllGlobals();
});

test('neither making the schema nor loading a piece calls Function or eval', async () => {
  const calls: string[] = [];
  const forbidden = (name: string) =>
    function refuse() {
      calls.push(name);
      throw new EvalError(`${name} is forbidden here`);
    };
  vi.stubGlobal('Function', forbidden('Function'));
  vi.stubGlobal('eval', forbidden('eval'));
  expect(() => new Function('')).toThrow(EvalError);
  calls.length = 0;
  const { loadPiece } = await import('../../engine/piece/load.ts');
  const sound = loadPiece(readFileSync('samples/jellyfish-parasol.piece.json', 'utf8'));
  const faulty = loadPiece('{"version": 1, "name": 7}');
  vi.unstubAllGlobals();
  expect(sound.value).toBeDefined();
  expect(faulty.diagnostics.length).toBeGreaterThan(1);
  expect(calls).toEqual([]);
});
