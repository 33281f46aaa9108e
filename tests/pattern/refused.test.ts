/** What the language does not have, and what it does not allow: each told by its code, at its place. */
import { describe, expect, test } from 'vitest';
import { faultsOf } from '../support/patterns.ts';

/** A body whose last statement would be a fine result. */
const light = (body: string) => `lowp vec3 light() {\n  ${body}\n}\n`;
const grey = 'return vec3(1.0);';
const local = (statement: string) => light(`${statement} ${grey}`);
const above = (declaration: string) => `${declaration}\n${light(grey)}`;

type Table = readonly (readonly [what: string, source: string, ...faults: string[]])[];

function tells(table: Table): void {
  test.each(table.map(([what, source, ...faults]) => ({ what, source, faults })))(
    '$what',
    ({ source, faults }) => {
      expect(faultsOf(source)).toEqual(faults);
    },
  );
}

describe('G4 words of GLSL that the language does not have', () => {
  tells([
    ['arrays', local('float a[3];'), 'no-arrays: ['],
    ['arrays with values', local('float a[2] = float[2](1.0, 2.0);'), 'no-arrays: ['],
    ['array parameters', above('float f(float a[2]) { return 1.0; }'), 'no-arrays: ['],
    ['array uniforms', above('uniform float a[2];'), 'no-arrays: ['],
    ['indices', light('return vec3(place[0]);'), 'no-arrays: ['],
    ['structs', above('struct Oar { float length; }'), 'not-in-the-language: struct'],
    ['matrices', local('mat2 m;'), 'not-in-the-language: mat2'],
    ['matrix constructors', local('float m = mat3(1.0);'), 'not-in-the-language: mat3'],
    ['vec4', local('vec4 v = vec4(1.0);'), 'not-in-the-language: vec4'],
    ['ivec', local('ivec2 v;'), 'not-in-the-language: ivec2'],
    ['bvec', local('bvec3 v;'), 'not-in-the-language: bvec3'],
    ['uint', local('uint u;'), 'not-in-the-language: uint'],
    ['switch', local('switch (pixel) { case 0: return vec3(0.0); }'), 'not-in-the-language: switch'],
    ['while', local('while (true) { }'), 'not-in-the-language: while'],
    ['do', local('do { } while (true);'), 'not-in-the-language: do', 'not-in-the-language: while'],
    ['break', local('for (int i = 0; i < 3; i++) { break; }'), 'not-in-the-language: break'],
    ['continue', local('for (int i = 0; i < 3; i++) { continue; }'), 'not-in-the-language: continue'],
    ['discard', local('discard;'), 'not-in-the-language: discard'],
    ['out', above('float f(out float a) { return 1.0; }'), 'not-in-the-language: out'],
    ['inout', above('float f(inout float a) { return 1.0; }'), 'not-in-the-language: inout'],
    ['in', above('float f(in float a) { return 1.0; }'), 'not-in-the-language: in'],
    ['const parameters', above('float f(const float a) { return 1.0; }'), 'expected-type: const'],
    ['void', above('void f() { }'), 'not-in-the-language: void'],
    ['highp', local('highp float a = 1.0;'), 'not-in-the-language: highp'],
    ['precision statements', above('precision mediump float;'), 'not-in-the-language: precision'],
    ['layout', above('layout(location = 0) vec3 a;'), 'not-in-the-language: layout'],
    ['samplers', above('uniform sampler2D sky;'), 'not-in-the-language: sampler2D'],
    ['words reserved for later', local('float sample = 1.0;'), 'not-in-the-language: sample'],
    ['#define', above('#define A 1'), 'no-preprocessor: #define A 1'],
    ['#version', above('#version 300 es'), 'no-preprocessor: #version 300 es'],
    ['prototypes', above('float f();'), 'no-prototypes: ;'],
    ['functions in functions', local('float f() { return 1.0; }'), 'expected: ('],
    ['bit operators: and', local('int a = pixel & 1;'), 'no-bit-operators: &'],
    ['bit operators: exclusive or', local('int a = pixel ^ 1;'), 'no-bit-operators: ^'],
    ['bit operators: shift', local('int a = pixel << 1;'), 'no-bit-operators: <<'],
    ['bit operators: not', local('int a = ~pixel;'), 'no-bit-operators: ~'],
    ['bit operators that assign', local('int a = 1; a &= 1;'), 'expected-assignment: &='],
    ['the comma operator', local('float a = (1.0, 2.0);'), 'expected: ,'],
    ['assignments inside expressions', local('float a; float b = (a = 1.0);'), 'expected: ='],
    ['steps inside expressions', local('int a = 1; int b = ++a;'), 'step-inside-expression: ++'],
    ['steps behind names inside expressions', local('int a = 1; int b = a--;'), 'step-inside-expression: --'],
    ['a precision for a bool', local('lowp bool a = true;'), 'bool-has-no-precision: bool'],
    ['functions of GLSL that are left out', light('return vec3(tan(1.0));'), 'not-in-the-language: tan(1.0)'],
  ]);
});

describe('G5 numbers', () => {
  tells([
    ['a float beyond the largest', local('float a = 32768.5;'), 'number-too-large: 32768.5'],
    ['an int beyond the largest', local('int a = 32769;'), 'number-too-large: 32769'],
    ['a negative one beyond the least', local('float a = -40000.0;'), 'number-too-large: 40000.0'],
    ['a large exponent', local('float a = 1e9;'), 'number-too-large: 1e9'],
    ['unsigned ones', local('int a = 1u;'), 'plain-whole-numbers: 1u'],
    ['hexadecimal ones', local('int a = 0x1F;'), 'plain-whole-numbers: 0x1F'],
    ['octal ones', local('int a = 017;'), 'plain-whole-numbers: 017'],
    ['a float without a point', local('float a = 1f;'), 'plain-whole-numbers: 1f'],
    ['the largest ones are allowed', local('float a = -32768.0; int b = 32768;')],
    ['all ways to write a float are allowed', local('float a = 1. + .5 + 1.5f + 2e0 + 2.5E-1 + 1e+2F;')],
  ]);
});

describe('G2 what is given cannot be set', () => {
  tells([
    ['along', local('along = 1.0;'), 'not-writable: along = 1.0'],
    ['a component of place', local('place.x = 1.0;'), 'not-writable: place.x = 1.0'],
    ['pixel', local('pixel++;'), 'not-writable: pixel++'],
    ['count', local('count -= 1;'), 'not-writable: count -= 1'],
    ['time', local('time *= 2.0;'), 'not-writable: time *= 2.0'],
    ['turn', local('turn = 0.0;'), 'not-writable: turn = 0.0'],
    ['seed', local('seed = 1;'), 'not-writable: seed = 1'],
    ['a const', `const float EBB = 1.0;\n${local('EBB = 2.0;')}`, 'not-writable: EBB = 2.0'],
    ['the variable of a loop', local('for (int i = 0; i < 3; i++) { i += 1; }'), 'not-writable: i += 1'],
    ['a function', `float f() { return 1.0; }\n${local('f = 1.0;')}`, 'not-writable: f = 1.0'],
    ['a copy can be', local('float a = along; a = 1.0;')],
    ['a parameter of a function can be', above('float f(float a) { a = 1.0; return a; }')],
    ['variables outside of functions', above('float ebb = 1.0;'), 'no-mutable-globals: ebb'],
    ['variables outside of functions without a value', above('float ebb;'), 'no-mutable-globals: ebb'],
  ]);
});

describe('G4 no implicit conversions', () => {
  tells([
    ['int to float', local('float a = 1;'), 'wrong-type: 1'],
    ['int among floats', local('float a = 1.0 + 1;'), 'wrong-type: 1.0 + 1'],
    ['int and float compared', local('bool a = along > 0;'), 'wrong-type: along > 0'],
    ['int times vector', light('return 2 * vec3(1.0);'), 'wrong-type: 2 * vec3(1.0)'],
    ['float to int', local('int a = 1.0;'), 'wrong-type: 1.0'],
    ['bool to float', local('float a = true;'), 'wrong-type: true'],
    [
      'int to an own function',
      `float f(float a) { return a; }\n${light('return vec3(f(1));')}`,
      'wrong-arguments: f(1)',
    ],
    ['int to a built-in', local('float a = pow(2, 3.0);'), 'wrong-arguments: pow(2, 3.0)'],
    ['int as a result', 'float f() { return 1; }\nlowp vec3 light() { return vec3(f()); }', 'wrong-type: 1'],
    ['a float as a colour', light('return 1.0;'), 'wrong-type: 1.0'],
    ['% of floats', local('float a = 5.0 % 2.0;'), 'wrong-type: 5.0 % 2.0'],
    ['vec2 and vec3', light('return place + vec3(1.0);'), 'wrong-type: place + vec3(1.0)'],
    ['vectors in order', local('bool a = place < place;'), 'wrong-type: place < place'],
    ['int as a condition', local('if (1) return vec3(0.0);'), 'wrong-type: 1'],
    ['float as a condition', local('if (along) return vec3(0.0);'), 'wrong-type: along'],
    ['int before ?', light('return pixel ? vec3(1.0) : vec3(0.0);'), 'wrong-type: pixel'],
    ['two types behind ?', light('return true ? vec3(1.0) : 1.0;'), 'wrong-type: true ? vec3(1.0) : 1.0'],
    ['! of a float', local('bool a = !along;'), 'wrong-type: !along'],
    ['- of a bool', local('bool a = -true;'), 'wrong-type: -true'],
    ['&& of ints', local('bool a = pixel && true;'), 'wrong-type: pixel && true'],
    ['== of two types', local('bool a = pixel == along;'), 'wrong-type: pixel == along'],
  ]);
});

describe('G4 components and constructors', () => {
  tells([
    ['too few', light('return vec3(1.0, 2.0);'), 'too-few-components: vec3(1.0, 2.0)'],
    ['too many', light('return vec3(1.0, 2.0, 3.0, 4.0);'), 'too-many-components: vec3(1.0, 2.0, 3.0, 4.0)'],
    ['none', light('return vec3();'), 'too-few-components: vec3()'],
    ['a fourth component', light('return place.xyw;'), 'no-such-component: place.xyw'],
    ['the third of two', light('return vec3(place.z);'), 'no-such-component: place.z'],
    ['letters of two sets', light('return vec3(place.xg, 1.0);'), 'no-such-component: place.xg'],
    ['four of them', light('return vec3(place.xyxy);'), 'no-such-component: place.xyxy'],
    ['of a float', light('return vec3(along.x);'), 'no-components: along.x'],
    ['set twice', local('vec2 a = place; a.xx = place;'), 'component-twice: a.xx = place'],
  ]);
});

describe('G6 statements', () => {
  tells([
    ['without effect', local('sin(along);'), 'no-effect: sin(along)'],
    ['of a name alone', local('along;'), 'expected-assignment: ;'],
    ['a const without a value', local('const float a;'), 'const-needs-value: a'],
    ['a const that is none', local('const float a = along;'), 'not-constant: along'],
    ['a const of a hash', local('const float a = hash(1);'), 'not-constant: hash(1)'],
    ['a return without a value', local('return;'), 'expected-value: ;'],
  ]);
});

describe('G7 loops have constant bounds', () => {
  tells([
    ['an end that is not known', local('for (int i = 0; i < count; i++) { }'), 'loop-bounds: i < count'],
    ['a start that is not known', local('for (int i = pixel; i < 4; i++) { }'), 'loop-bounds: pixel'],
    ['a step that is not known', local('for (int i = 0; i < 4; i += count) { }'), 'loop-bounds: i += count'],
    ['a step of something else', local('int j = 0; for (int i = 0; i < 4; j++) { }'), 'loop-bounds: j++'],
    ['a float that counts', local('for (float i = 0.0; i < 4.0; i += 1.0) { }'), 'loop-bounds: 0.0'],
    ['a variable from outside', local('int i; for (i = 0; i < 4; i++) { }'), 'expected-type: i'],
    ['no head', local('for (;;) { }'), 'expected-type: ;'],
    ['two variables', local('for (int i = 0, j = 0; i < 4; i++) { }'), 'expected: ,'],
    [
      'the variable is gone behind the loop',
      local('for (int i = 0; i < 4; i++) { } int a = i;'),
      'unknown-name: i',
    ],
  ]);
});

describe('G8 functions', () => {
  tells([
    ['recursion', above('float f(float x) { return f(x); }'), 'no-recursion: f(x)'],
    ['light calling itself', light('return light();'), 'no-recursion: light()'],
    [
      'recursion by a detour',
      above('float f(float x) { return g(x); }\nfloat g(float x) { return f(x); }'),
      'unknown-function: g(x)',
    ],
    ['a way without a return', above('float f(float x) { if (x > 0.0) return 1.0; }'), 'missing-return: f'],
    [
      'a loop that may not turn',
      above('float f() { for (int i = 0; i < 0; i++) return 1.0; }'),
      'missing-return: f',
    ],
    ['light without a return', 'lowp vec3 light() { }', 'missing-return: light'],
    ['both ways return', above('float f(float x) { if (x > 0.0) return 1.0; else { return 2.0; } }')],
    ['no light', 'float f() { return 1.0; }', 'no-light: '],
    ['light with parameters', 'lowp vec3 light(float a) { return vec3(a); }', 'no-light: light'],
    ['light of another type', 'float light() { return 1.0; }', 'no-light: light'],
    ['unknown ones', light('return vec3(ebb(1.0));'), 'unknown-function: ebb(1.0)'],
    ['not defined yet', `${light('return vec3(f());')}float f() { return 1.0; }\n`, 'unknown-function: f()'],
    ['too many arguments', light('return vec3(sin(1.0, 2.0));'), 'wrong-arguments: sin(1.0, 2.0)'],
    ['a function as a value', `float f() { return 1.0; }\n${light('return vec3(f);')}`, 'needs-call: f'],
    ['a variable that is called', light('return vec3(along(1.0));'), 'not-a-function: along(1.0)'],
  ]);
});

describe('G9 names', () => {
  tells([
    ['unknown', light('return vec3(ebb);'), 'unknown-name: ebb'],
    ['of a built-in', above('float sin(float x) { return x; }'), 'name-taken: sin'],
    ['of a built-in that is left out', above('const float tan = 1.0;'), 'name-taken: tan'],
    ['of our library', above('float noise(float x) { return x; }'), 'name-taken: noise'],
    ['of our library, for other types', above('float noise(int x) { return 1.0; }'), 'name-taken: noise'],
    ['of our primitive', above('float hash(float x) { return x; }'), 'name-taken: hash'],
    ['of what is given', above('const float time = 1.0;'), 'name-taken: time'],
    ['twice in one place', local('float a = 1.0; float a = 2.0;'), 'name-taken: a'],
    ['two parameters', above('float f(float a, float a) { return a; }'), 'name-taken: a'],
    ['a parameter declared anew', above('float f(float a) { float a = 1.0; return a; }'), 'name-taken: a'],
    [
      'a loop variable declared anew',
      local('for (int i = 0; i < 2; i++) { float i = 1.0; }'),
      'name-taken: i',
    ],
    [
      'twin functions',
      above('float f(float a) { return a; }\nint f(float b) { return 1; }'),
      'name-taken: f',
    ],
    ['main', above('float main() { return 1.0; }'), 'name-taken: main'],
    ['with two underscores', local('float a__b = 1.0;'), 'reserved-name: a__b'],
    ['gl_', local('float gl_a = 1.0;'), 'reserved-name: gl_a'],
    ['GL_', local('float GL_ES = 1.0;'), 'reserved-name: GL_ES'],
    ['webgl_', local('float webgl_a = 1.0;'), 'reserved-name: webgl_a'],
    ['of the prelude', above('const float weft_time = 1.0;'), 'reserved-name: weft_time'],
    ['endless ones', local(`float ${'a'.repeat(1025)} = 1.0;`), `name-too-long: ${'a'.repeat(1025)}`],
    [
      'hiding an outer one is allowed',
      local('float along = 1.0; { int along = 2; } for (int sin = 0; sin < 2; sin++) { }'),
    ],
    ['overloading is allowed', above('float f(float a) { return a; }\nfloat f(vec2 a) { return f(a.x); }')],
  ]);
});

describe('G3 parameters', () => {
  tells([
    ['without a description', above('uniform float ebb;'), 'uniform-without-description: ebb'],
    ['with a value', above('uniform float ebb = 1.0;'), 'expected: ='],
  ]);

  const number = { kind: 'number', name: 'ebb', label: 'Ebb', min: 0, max: 1, default: 0 } as const;

  test('declared as another type than described', () => {
    expect(faultsOf(above('uniform int ebb;'), [number])).toEqual(['uniform-type: ebb']);
  });

  test('described, but not declared: a warning', () => {
    expect(faultsOf(light(grey), [number])).toEqual(['parameter-not-declared: ']);
  });

  test('declared twice', () => {
    expect(faultsOf(above('uniform float ebb;\nuniform float ebb;'), [number])).toEqual(['name-taken: ebb']);
  });

  test('cannot be set', () => {
    const source = `uniform float ebb;\n${local('ebb = 1.0;')}`;
    expect(faultsOf(source, [number])).toEqual(['not-writable: ebb = 1.0']);
  });

  const gradient = {
    kind: 'gradient',
    name: 'reed',
    label: 'Reed',
    default: [{ at: 0, colour: '#000000' }],
  } as const;

  test('a gradient takes one float', () => {
    const source = light('return gradient_reed(1);');
    expect(faultsOf(source, [{ ...gradient, default: [...gradient.default] }])).toEqual([
      'wrong-arguments: gradient_reed(1)',
    ]);
  });

  test('a gradient is no variable', () => {
    const source = light('return gradient_reed;');
    expect(faultsOf(source, [{ ...gradient, default: [...gradient.default] }])).toEqual([
      'needs-call: gradient_reed',
    ]);
  });
});

describe('G11 signs that are missing, or too many', () => {
  tells([
    ['a semicolon behind a function', `${light(grey)};`, 'stray-semicolon: ;'],
    ['a brace too many', `${light(grey)}}`, 'stray-brace: }'],
    ['a semicolon missing', local('float a = 1.0'), 'expected: return'],
    ['a bracket missing', light('return vec3(1.0;'), 'expected: ;'],
    ['a brace missing', 'lowp vec3 light() { return vec3(1.0);', 'expected: '],
    ['a comment not closed', `${light(grey)}/* never`, 'comment-not-closed: /* never'],
    ['a sign without meaning', local('float a = 1.0 @ 2.0;'), 'unknown-character: @', 'expected: 2.0'],
    ['a letter without meaning', local('float a = ü;'), 'unknown-character: ü', 'expected-value: ;'],
    ['a line that goes on in a comment', `// hidden \\\n${light(grey)}`, 'unknown-character: \\'],
    ['a comment that would go on behind the source', `${light(grey)}// hidden \\`, 'unknown-character: \\'],
    [
      'a comment ends at a carriage return',
      `// shown \r float ebb;\n${light(grey)}`,
      'no-mutable-globals: ebb',
    ],
    ['a form feed', `\f${light(grey)}`, 'unknown-character: \f'],
  ]);
});
