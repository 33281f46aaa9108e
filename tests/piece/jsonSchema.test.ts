/** The JSON Schema of the piece file: complete, and of one mind with the loader. */
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { pieceJsonSchema } from '../../engine/piece/jsonSchema.ts';
import { checkPiece } from '../../engine/piece/load.ts';
import { newestVersion } from '../../engine/piece/migrate.ts';
import { clipPath, stage, stageWith } from './stage.ts';

const schema = pieceJsonSchema();
/** The text of the schema read back by another way, as an editor would. */
const readBack = z.fromJSONSchema(JSON.parse(JSON.stringify(schema)));

/** All objects in the schema, with where they stand. */
function* parts(value: unknown, path = '#'): Generator<[path: string, part: Record<string, unknown>]> {
  if (typeof value !== 'object' || value === null) return;
  if (!Array.isArray(value)) yield [path, value as Record<string, unknown>];
  for (const [key, inner] of Object.entries(value)) yield* parts(inner, `${path}/${key}`);
}

describe('the schema', () => {
  test('is JSON Schema 2020-12 of the newest version', () => {
    expect(schema).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema', type: 'object' });
    expect(schema.properties).toMatchObject({ version: { const: newestVersion } });
    expect(schema.required).toEqual(['version', 'name', 'board', 'lines', 'looks']);
  });

  test('allows no unknown field anywhere but among the parameters of a clip', () => {
    for (const [path, part] of parts(schema)) {
      if (part.type !== 'object') continue;
      const isParameters = path === '#/$defs/clip/properties/parameters';
      expect([path, part.additionalProperties === false]).toEqual([path, !isParameters]);
    }
  });

  test('bounds every number and every list', () => {
    for (const [path, part] of parts(schema)) {
      if (part.type === 'array' && part.prefixItems === undefined) {
        expect(part, path).toHaveProperty('maxItems');
      }
      if ((part.type === 'integer' || part.type === 'number') && !('const' in part)) {
        expect('minimum' in part || 'exclusiveMinimum' in part, path).toBe(true);
        expect(part.maximum, path).toBeLessThan(1e8);
      }
    }
  });

  test('has every reference that it makes', () => {
    const definitions = schema.$defs as Record<string, unknown>;
    const references = [...parts(schema)].flatMap(([, { $ref }]) => (typeof $ref === 'string' ? [$ref] : []));
    expect(references.length).toBeGreaterThan(50);
    for (const reference of references) {
      expect(definitions).toHaveProperty([reference.replace('#/$defs/', '')]);
    }
  });
});

describe('agrees with the loader', () => {
  const faults: readonly Readonly<Record<string, unknown>>[] = [
    { version: newestVersion + 1 },
    { name: undefined },
    { extra: 1 },
    { board: 'abacus' },
    { tickMilliseconds: 4 },
    { tickMilliseconds: 20.5 },
    { lines: [] },
    { 'lines[0].part': 'ws2812' },
    { 'lines[0].runs[0].flat.kind': 'circle' },
    { 'lines[0].runs[0].flat.count': 0 },
    { 'lines[0].runs[0].flat.start': [0] },
    { zones: [{ name: 'z', source: { kind: 'twins', of: [{ kind: 'all' }] } }] },
    { looks: [] },
    { [`${clipPath}.blend`]: 'add' },
    { [`${clipPath}.opacity`]: 256 },
    { [`${clipPath}.parameters.tint`]: 'red' },
    { [`${clipPath}.parameters.tint`]: { keys: [] } },
    { 'controls.buttons': [{ name: 'b', pin: 2, press: { do: 'explode' } }] },
    { 'output.curve': 'gamma' },
    { 'supply.limitMilliamps': 0 },
  ];

  test('on what is sound', () => {
    expect(checkPiece(stage()).diagnostics).toEqual([]);
    expect(readBack.safeParse(stage()).success).toBe(true);
  });

  test.each(faults)('on %j', (changes) => {
    const piece = stageWith(changes);
    expect(checkPiece(piece).value).toBeUndefined();
    expect(readBack.safeParse(piece).success).toBe(false);
  });
});
