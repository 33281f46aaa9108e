import { describe, expect, test } from 'vitest';
import { libraryPatterns } from '../../engine/pattern/library.ts';
import { pieceSchema } from '../../engine/piece/schema.ts';
import { jsonOf, run } from './run.ts';

describe('schema', () => {
  test('is the JSON Schema of the piece file: required fields, no unknown ones', async () => {
    const outcome = await run(['schema', '--json']);
    const schema = jsonOf(outcome);
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(Object.keys(schema.properties)).toEqual(Object.keys(pieceSchema.shape));
    expect(schema.required).toEqual(['version', 'name', 'board', 'lines', 'looks']);
    expect(schema.additionalProperties).toBe(false);
    expect((await run(['schema'])).output).toBe(outcome.output);
  });
});

describe('patterns', () => {
  test('tells each by the name that a clip uses', async () => {
    const told = jsonOf(await run(['patterns', '--json']));
    expect(told.map(({ name }: { name: string }) => name)).toEqual(
      libraryPatterns.map(({ name, revision }) => `${name}/${revision}`),
    );
    expect(told[0]).toMatchObject({
      title: expect.any(String),
      sees: expect.any(String),
      parameters: expect.any(Array),
    });
    const { output } = await run(['patterns']);
    for (const { name, title, sees } of told) expect(output).toContain(`${name}  ${title}\n  ${sees}\n`);
  });

  test('--glsl prints a whole fragment shader', async () => {
    const { exitCode, output } = await run(['patterns', '--glsl', 'wake/1']);
    expect(exitCode).toBe(0);
    expect(output).toMatch(/^#version 300 es\n/);
    expect(output).toContain('lowp vec3 light()');
    expect(output).toContain('void main()');
  });
});
