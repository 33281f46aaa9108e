/** The reader of JSON against RFC 8259 as the JavaScript engine reads it, and against hostile text. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readJson } from '../../engine/piece/json.ts';
import { placeOfPath } from '../../engine/piece/places.ts';

/** What JSON.parse makes of a text, or undefined where it refuses it; no JSON value is undefined. */
function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

const first = (text: string) => readJson(text).diagnostics[0];

describe('agrees with JSON.parse', () => {
  test('on every text that JSON.stringify writes (seed 4711)', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.constantFrom('', ' ', '\t', '  '), (value, indent) => {
        const text = JSON.stringify(value, null, indent);
        fc.pre(!text.includes('"__proto__":'));
        expect(readJson(text).value?.value).toEqual(JSON.parse(text));
      }),
      { seed: 4711, numRuns: 2000 },
    );
  });

  test('on what is JSON and what is not, letter by letter (seed 4712)', () => {
    // Few letters, so that many of the texts are nearly or wholly well formed.
    const letters = [...'[]{},:"\\u0a1-.eE+ \n\ttrue'];
    let refused = 0;
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...letters), maxLength: 12 }), (text) => {
        const expected = parsed(text);
        const read = readJson(text);
        if (read.diagnostics[0]?.code === 'key-twice') return;
        if (expected === undefined) refused += 1;
        expect(read.value?.value).toEqual(expected);
        expect(read.diagnostics.length > 0).toBe(expected === undefined);
      }),
      { seed: 4712, numRuns: 20_000 },
    );
    expect(refused).toBeGreaterThan(1000);
    expect(refused).toBeLessThan(20_000);
  });

  test('on every damage of one letter to a small file', () => {
    const whole = '{"name": "Steg 4", "at": [-0.5, 1e3, true, null], "deep": {"a": "\\u00e4\\n"}}';
    for (let at = 0; at < whole.length; at++) {
      for (const letter of ['', '"', ',', '}', ']', '0', '\\', '\n', 'x']) {
        const text = whole.slice(0, at) + letter + whole.slice(at + 1);
        expect(readJson(text).value?.value, text).toEqual(parsed(text));
      }
    }
  });
});

describe('names the place', () => {
  const places: readonly [text: string, line: number, column: number, message: RegExp][] = [
    ['{\n  "name": "Steg",\n}', 3, 1, /comma stands in front of the closing brace/],
    ['[1, 2,]', 1, 7, /value is expected in front of this bracket/],
    ['{"a": 1\n "b": 2}', 2, 2, /comma or } is expected/],
    ["{'a': 1}", 1, 2, /name of a field is expected/],
    ['{"a": \'b\'}', 1, 7, /double quotes/],
    ['{"a" 1}', 1, 6, /colon is expected/],
    ['{"a": yes}', 1, 7, /word yes has no meaning/],
    ['{"a": "b\n"}', 1, 7, /no closing quote/],
    ['{"a": "b\tc"}', 1, 9, /control character/],
    ['{"a": "\\x"}', 1, 8, /no escape that JSON knows/],
    ['{"a": 1 // why\n}', 1, 9, /comma or } is expected/],
    ['{"a": /* why */ 1}', 1, 7, /no comments/],
    ['{"a": 1} {', 1, 10, /behind the end/],
    ['{"a": [1, 2', 1, 12, /bracket of line 1 is still open/],
    ['', 1, 1, /ends where a value is expected/],
    ['{"a": 01}', 1, 8, /comma or } is expected/],
  ];
  test.each(places)('%j at line %i, column %i', (text, line, column, message) => {
    expect(parsed(text)).toBeUndefined();
    const diagnostic = first(text);
    expect(diagnostic).toMatchObject({ code: 'json-syntax', severity: 'error', span: { line, column } });
    expect(diagnostic?.message).toMatch(message);
  });

  test('of every value by its path', () => {
    const text = '{\n  "looks": [\n    { "name": "Dusk" },\n    { "name": "Dawn" }\n  ]\n}';
    const { value } = readJson(text);
    const at = (path: string) => {
      const place = placeOfPath(value?.value, value!.places, path);
      return place && text.slice(...place);
    };
    expect(at('looks[1].name')).toBe('"Dawn"');
    expect(at('looks[0]')).toBe('{ "name": "Dusk" }');
    // What is missing is shown by what it is missing from.
    expect(at('looks[1].tracks[0].clips')).toBe('{ "name": "Dawn" }');
    expect(at('zones')).toBeUndefined();
  });
});

describe('is stricter than the standard', () => {
  test('about a key twice, and goes on to find the next one', () => {
    const { diagnostics, value } = readJson('{"a": 1, "a": 2, "b": {"c": 1, "c": 2}}');
    expect(value).toBeUndefined();
    expect(diagnostics.map(({ code, span }) => [code, span?.column])).toEqual([
      ['key-twice', 10],
      ['key-twice', 32],
    ]);
  });

  test.each(['__proto__', '\\u005f_proto__'])('about %s, which would reach behind the data', (key) => {
    const { diagnostics } = readJson(`{"a": {"${key}": {"polluted": true}}}`);
    expect(diagnostics).toMatchObject([{ code: 'key-forbidden', span: { column: 8 } }]);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });

  test('but skips a byte order mark', () => {
    expect(readJson('\ufeff{"a": 1}').value?.value).toEqual({ a: 1 });
  });
});

describe('withstands', () => {
  const hostile: readonly [name: string, text: string, code: string][] = [
    ['100,000 open brackets', '['.repeat(100_000), 'too-deep'],
    ['100,000 nested objects', '{"a":'.repeat(100_000), 'too-deep'],
    ['a list of 300,000 numbers', `[${'0,'.repeat(300_000)}0]`, 'file-too-large'],
    ['5 million spaces', ' '.repeat(5_000_000), 'file-too-large'],
    ['4 million characters without a closing quote', `"${'a'.repeat(3_999_999)}`, 'json-syntax'],
    ['2 million escapes', `"${'\\n'.repeat(1_900_000)}`, 'json-syntax'],
    ['a million quotes', '"'.repeat(1_000_000), 'json-syntax'],
    ['100,000 keys twice', `{${'"a":1,'.repeat(100_000)}"b":1}`, 'key-twice'],
  ];
  test.each(hostile)('%s', (_, text, code) => {
    const start = performance.now();
    const { diagnostics, value } = readJson(text);
    expect(performance.now() - start).toBeLessThan(1000);
    expect(value).toBeUndefined();
    expect(diagnostics[0]).toMatchObject({ code, severity: 'error' });
    expect(diagnostics[0]?.span).toBeDefined();
    expect(diagnostics.length).toBeLessThanOrEqual(100);
  });
});
