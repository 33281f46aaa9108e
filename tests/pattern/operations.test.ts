/** Every operation of the graph at the edges of its types, against integers of any size. */
import { describe, expect, test } from 'vitest';
import { rangeOf, wrap } from '../../engine/fixed/integers.ts';
import { evaluate } from '../../engine/pattern/evaluate.ts';
import { Graph } from '../../engine/pattern/graph.ts';
import { inOrder, operandsOf } from '../../engine/pattern/ir.ts';
import { compileProgram } from '../../engine/pattern/javascript.ts';
import { Chance } from '../support/generate/chance.ts';
import { compiled, programOf, randomSettings, randomZone } from '../support/patterns.ts';
import {
  argumentsFor,
  definedResult,
  exactly,
  exactResult,
  nestedCases,
  operationCases,
  wrapExact,
} from '../support/patterns-cases.ts';
import { generatePattern } from '../support/patterns-generate.ts';

const cases = operationCases(0.06, 1);
const asked = cases.flatMap((one) => argumentsFor(one, 60, 2).map((values) => ({ one, values })));

describe('F1 to F5 operations', () => {
  test('there are enough cases: each operation, thousands of products', () => {
    const counts = new Map<string, number>();
    for (const { op } of cases) counts.set(op, (counts.get(op) ?? 0) + 1);
    for (const op of Object.keys(exactly)) expect(counts.get(op), op).toBeGreaterThanOrEqual(1);
    expect(counts.get('mul')).toBeGreaterThan(3000);
    expect(asked.length).toBeGreaterThan(100_000);
  });

  test("F1 wrapping is two's complement", () => {
    const values = [
      0,
      1,
      -1,
      32767,
      32768,
      65535,
      65536,
      -32768,
      -32769,
      2 ** 31 - 1,
      2 ** 31,
      2 ** 32 + 5,
      -(2 ** 40) - 3,
    ];
    for (const type of ['i16', 'u16', 'i32', 'u32', 'bool'] as const)
      for (const value of values)
        expect(wrap[type](value), `${type} ${value}`).toBe(wrapExact(type, BigInt(value)));
  });

  test('the definition gives what exact integers give', () => {
    for (const { one, values } of asked) {
      const [value] = evaluate([one.node], { input: () => 0, keyed: (slot) => values[slot]! });
      if (!Object.is(value, exactResult(one, values)))
        expect(value, `${one.name} of ${values}`).toBe(exactResult(one, values));
    }
  });

  test('F12 the range of each holds its results', () => {
    for (const { one, values } of asked) {
      const { min, max } = one.node;
      const result = exactResult(one, values);
      if (result < min || result > max)
        expect([min, max], `${one.name} of ${values} is ${result}`).toBe('around it');
    }
  });

  test('F13 the generated JavaScript gives what exact integers give', () => {
    const index = new Graph().input('index', 'u16', rangeOf.u16);
    for (const one of cases) {
      const draw = compileProgram({
        levels: [one.node, index, index],
        gradients: [],
        keyed: [],
        names: new Map(),
      });
      // Plain numbers on both sides, so that nothing but the program itself wraps a value.
      const out = new Float64Array(3) as unknown as Uint8Array;
      for (const values of argumentsFor(one, 60, 2)) {
        draw(out, Uint16Array.of(0), Int16Array.of(0, 0), 0, 0, values as unknown as Int32Array);
        if (out[0] !== exactResult(one, values))
          expect(out[0], `${one.name} of ${values}`).toBe(exactResult(one, values));
      }
    }
  });

  test('F13 the generated JavaScript gives what the graph gives, one operation inside the other', () => {
    const index = new Graph().input('index', 'u16', rangeOf.u16);
    for (const one of nestedCases(400, 31)) {
      const draw = compileProgram({
        levels: [one.node, index, index],
        gradients: [],
        keyed: [],
        names: new Map(),
      });
      const out = new Float64Array(3) as unknown as Uint8Array;
      for (const values of argumentsFor(one, 20, 32)) {
        draw(out, Uint16Array.of(0), Int16Array.of(0, 0), 0, 0, values as unknown as Int32Array);
        const expected = definedResult(one, values);
        if (out[0] !== expected) expect(out[0], `${one.name} of ${values}`).toBe(expected);
      }
    }
  });

  test('patterns make no operation on types that the cases leave out', () => {
    const kindOf = (op: string, type: string, operands: readonly string[]) =>
      `${op} ${type} (${operands.join(', ')})`;
    const known = new Set(
      cases.map(({ op, type, operands }) =>
        kindOf(
          op,
          type,
          operands.map((one) => one.type),
        ),
      ),
    );
    const unknown = new Set<string>();
    for (let seed = 0; seed < 300; seed++) {
      const { source, parameters } = generatePattern(seed);
      const chance = new Chance(seed);
      const pattern = compiled({ source, parameters });
      const program = programOf(pattern, randomSettings(chance, parameters), randomZone(chance));
      for (const node of inOrder([...pattern.levels, ...program.levels])) {
        const operands = operandsOf(node);
        if (operands.length === 0 || node.op === 'call' || node.op.startsWith('gradient')) continue;
        // Constants are printed in whatever type is wanted.
        if (operands.some(({ op }) => op === 'const')) continue;
        const kind = kindOf(
          node.op,
          node.type,
          operands.map(({ type }) => type),
        );
        if (!known.has(kind)) unknown.add(kind);
      }
    }
    expect([...unknown]).toEqual([]);
  });
});
