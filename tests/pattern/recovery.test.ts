/** Several faults are told together, each at its place, and one fault does not set off others. */
import { describe, expect, test } from 'vitest';
import { compilePattern } from '../../engine/pattern/compile.ts';
import { faultsOf } from '../support/patterns.ts';

describe('G11 recovery', () => {
  test('the parser goes on behind each fault, in every function', () => {
    const source = `float low(float x) {
  float y = x +;
  y = 3 3;
  if (y > ) return 1.0;
  for (int i; i < 3; i++) { y = [1]; }
  return y;
}
lowp vec3 light() {
  vec4 sky = vec4(1.0);
  return vec3(1.0;
}
`;
    expect(faultsOf(source)).toEqual([
      'expected-value: ;',
      'expected: 3',
      'expected-value: )',
      'expected: ;',
      'expected-value: [',
      'not-in-the-language: vec4',
      'expected: ;',
    ]);
  });

  test('the check goes on behind each fault, in every function', () => {
    const source = `const float EBB = along;
uniform float unknown;
float low(float x) {
  float y = 1;
  bool high = x > 0;
  return nothing + y;
}
float gap(float x) {
  if (x > 0.0) return 1.0;
}
lowp vec3 light() {
  int n = 1.5;
  place = vec2(0.0);
  return vec3(low(2), gap(1.0), sin(true));
}
`;
    expect(faultsOf(source)).toEqual([
      'not-constant: along',
      'uniform-without-description: unknown',
      'wrong-type: 1',
      'wrong-type: x > 0',
      'unknown-name: nothing',
      'missing-return: gap',
      'wrong-type: 1.5',
      'not-writable: place = vec2(0.0)',
      'wrong-arguments: low(2)',
      'wrong-arguments: sin(true)',
    ]);
  });

  test('a name declared with a wrong value does not complain at its uses', () => {
    const source = 'lowp vec3 light() { float a = 1; float b = a + 1.0; return vec3(a, b, a); }';
    expect(faultsOf(source)).toEqual(['wrong-type: 1']);
  });

  test('a parameter without a description does not complain at its uses', () => {
    expect(faultsOf('uniform float ebb; lowp vec3 light() { return vec3(ebb); }')).toEqual([
      'uniform-without-description: ebb',
    ]);
  });

  test('a loop over floats complains once', () => {
    const source =
      'lowp vec3 light() { float s = 0.0; for (float i = 0.0; i < 1.0; i += 0.1) s += i; return vec3(s); }';
    expect(faultsOf(source)).toEqual(['loop-bounds: 0.0']);
  });

  test('faults of the characters, of the grammar and of the types come in stages', () => {
    expect(faultsOf('lowp vec3 light() { float a = 1; return vec3(a) }')).toEqual(['expected: }']);
    expect(faultsOf('lowp vec3 light() { float a = 1; return vec3(a); }')).toEqual(['wrong-type: 1']);
  });

  test('lines and columns count from one', () => {
    const [diagnostic] = compilePattern('\n\n  lowp vec3 light() {\n    return 1.0;\n  }\n', []).diagnostics;
    expect(diagnostic!.span).toEqual({ start: 35, end: 38, line: 4, column: 12 });
  });

  test('fifty faults are enough', () => {
    const { diagnostics } = compilePattern(`lowp vec3 light() {${' float a = ;'.repeat(200)} }`, []);
    expect(diagnostics).toHaveLength(50);
  });

  test('every diagnostic has a message of one sentence and advice of one', () => {
    const { diagnostics } = compilePattern('uniform float x; float f() { y = 1; return; } ;', []);
    expect(diagnostics.length).toBeGreaterThan(1);
    for (const { message, advice } of diagnostics) {
      expect(message).toMatch(/^[^\n]+\.$/);
      expect(advice).toMatch(/^[^\n]+\.$/);
    }
  });
});

describe('warnings', () => {
  test('a lowp that may leave -2 to 2 is kept as mediump, and told', () => {
    expect(faultsOf('lowp vec3 light() { lowp float a = time; return vec3(fract(a)); }')).toEqual([
      'lowp-too-narrow: time',
    ]);
  });

  test('a mediump that may wrap is told where it is made', () => {
    expect(faultsOf('lowp vec3 light() { float a = time * 30.0; return vec3(a); }')).toEqual([
      'lowp-too-narrow: a',
      'may-overflow: time * 30.0',
    ]);
  });

  test.each([
    ['its fraction', 'fract(time * 30.0)'],
    ['its sine', 'sin(time * 30.0)'],
    ['its remainder', 'mod(time * 30.0, 4.0) * 0.25'],
  ])('a mediump that may wrap is fine where only %s is used', (_, expression) => {
    expect(faultsOf(`lowp vec3 light() { return vec3(${expression}); }`)).toEqual([]);
  });

  test('what is told of a function of our library stands on its call', () => {
    const source = 'lowp vec3 light() { return vec3(noise(time * 9000.0)); }';
    for (const { span } of compilePattern(source, []).diagnostics) {
      expect(span!.end).toBeLessThanOrEqual(source.length);
    }
    const greedy = `lowp vec3 light() {
  float s = 0.0;
  for (int i = 0; i < 1024; i++) s += noise(vec2(s, time)) + noise(vec2(time, s));
  return vec3(s);
}`;
    const last = compilePattern(greedy, []).diagnostics.at(-1)!;
    expect(last.code).toBe('too-much-work');
    expect(greedy.slice(last.span!.start, last.span!.end)).toMatch(/^(noise|vec2|time|s\b)/);
  });
});
