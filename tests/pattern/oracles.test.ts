/**
 * Our front end against two from outside: the Khronos reference compiler `glslangValidator`, and the grammar
 * of the standard as `@shaderfrog/glsl-parser` has it.
 */
import { describe, expect, test } from 'vitest';
import { compilePattern } from '../../engine/pattern/compile.ts';
import commonSource from '../../engine/pattern/library/common.glsl';
import { libraryPatterns, referenceOf } from '../../engine/pattern/library.ts';
import { fragmentShader } from '../../engine/pattern/prelude.ts';
import { Chance } from '../support/generate/chance.ts';
import { lightOf, type PatternSource } from '../support/patterns.ts';
import { damage } from '../support/patterns-damage.ts';
import { generatePattern } from '../support/patterns-generate.ts';
import { judgeShaders } from '../support/patterns-glslang.ts';
import { ourShape, theirShape } from '../support/patterns-shape.ts';

const generated = Array.from({ length: 500 }, (_, seed) => generatePattern(seed));

/** The shaders that the reference compiler refuses, with its complaint. */
function refusedOf(patterns: readonly PatternSource[]): string[] {
  const verdicts = judgeShaders(patterns.map((pattern) => fragmentShader(pattern)));
  return verdicts.flatMap(({ accepted, complaint }, i) =>
    accepted ? [] : [`${complaint}\n${patterns[i]!.source}`],
  );
}

const isAccepted = ({ source, parameters }: PatternSource) =>
  compilePattern(source, parameters).pattern !== undefined;

describe('G13 what we accept, the reference compiler of GLSL ES 3.00 accepts', () => {
  test('it does refuse: the comparison can fail', () => {
    const [fine, wrong] = judgeShaders([
      fragmentShader({ source: lightOf('vec3(1.0)'), parameters: [] }),
      fragmentShader({ source: lightOf('vec3(1)  + 1'), parameters: [] }),
    ]);
    expect(fine).toEqual({ accepted: true, complaint: '' });
    expect(wrong!.accepted).toBe(false);
    expect(wrong!.complaint).toMatch(/ERROR/);
  });

  test('every pattern of the library', () => {
    expect(refusedOf(libraryPatterns)).toEqual([]);
  });

  test('500 generated patterns, of many kinds', () => {
    expect(refusedOf(generated)).toEqual([]);
    const text = generated.map(({ source }) => source).join('\n');
    const wanted = ['abs', 'sign', 'floor', 'ceil', 'fract', 'mod', 'min', 'max', 'clamp', 'mix', 'step'];
    wanted.push('smoothstep', 'sqrt', 'inversesqrt', 'sin', 'cos', 'atan', 'pow', 'exp2', 'log2', 'length');
    wanted.push('distance', 'dot', 'normalize', 'radians', 'degrees', 'hash', 'noise', 'hue', 'vec2', 'vec3');
    for (const name of wanted) expect(text.split(`${name}(`).length, name).toBeGreaterThan(20);
    for (const word of [
      'for (',
      'else',
      'const ',
      'uniform ',
      'gradient_',
      'lowp ',
      '^^',
      '%',
      '?',
      '++',
      '.zyx',
    ])
      expect(text, word).toContain(word);
  });

  test('every damaged pattern that still compiles', () => {
    const chance = new Chance(2024);
    const kept: PatternSource[] = [];
    for (let i = 0; i < 3000; i++) {
      const { source, parameters } = generated[i % 200]!;
      const damaged = { source: damage(source, chance, 2), parameters };
      if (isAccepted(damaged)) kept.push(damaged);
    }
    expect(kept.length).toBeGreaterThan(200);
    expect(refusedOf(kept)).toEqual([]);
  });

  test('words and functions of the standard, wherever a name can stand', () => {
    const forms: ((word: string) => string)[] = [
      (word) => lightOf(`vec3(${word})`, `  float ${word} = 1.0;\n`),
      (word) => `const float ${word} = 1.0;\n${lightOf(`vec3(${word})`)}`,
      (word) => `float ${word}(float a) { return a; }\n${lightOf(`vec3(${word}(1.0))`)}`,
      (word) => `float ${word}(int a, bool b, vec2 c) { return 1.0; }\n${lightOf('vec3(1.0)')}`,
      (word) => `float lift(float ${word}) { return ${word}; }\n${lightOf('vec3(lift(1.0))')}`,
      (word) => lightOf('vec3(1.0)', `  for (int ${word} = 0; ${word} < 2; ${word}++) { }\n`),
    ];
    const kept = words.flatMap((word) =>
      forms.map((form) => ({ source: form(word), parameters: [] })).filter(isAccepted),
    );
    expect(kept.length).toBeGreaterThan(200);
    expect(refusedOf(kept)).toEqual([]);
    // Words are refused as words, so that a maker reads why.
    const [diagnostic] = compilePattern(forms[0]!('sampler2D'), []).diagnostics;
    expect(diagnostic!.code).toBe('not-in-the-language');
  });
});

/** GLSL ES 3.00, sections 3.6 and 8; words and functions of later versions; names of ours and of WebGL. */
const words = `
  attribute const uniform varying layout centroid flat smooth break continue do for while switch case default if
  else in out inout float int void bool true false invariant discard return mat2 mat3 mat4 mat2x3 vec2 vec3 vec4
  ivec2 bvec3 uint uvec4 lowp mediump highp precision sampler2D sampler3D samplerCube isampler2D usampler3D struct
  coherent volatile restrict readonly writeonly resource atomic_uint noperspective patch sample subroutine common
  partition active asm class union enum typedef template this goto inline noinline public static extern external
  interface long short double half fixed unsigned superp input output hvec2 dvec3 fvec4 sampler3DRect filter
  image1D iimage2D uimageBuffer sampler1D sampler2DRect samplerBuffer sampler2DMS sizeof cast namespace using
  shared buffer precise dmat2 image2DMS samplerCubeArray
  radians degrees sin cos tan asin acos atan sinh cosh tanh asinh acosh atanh pow exp log exp2 log2 sqrt
  inversesqrt abs sign floor trunc round roundEven ceil fract mod modf min max clamp mix step smoothstep isnan
  isinf floatBitsToInt packSnorm2x16 length distance dot cross normalize faceforward reflect refract outerProduct
  transpose determinant inverse lessThan equal any all not textureSize texture textureLod texelFetch textureGrad
  dFdx dFdy fwidth main textureGather imageLoad memoryBarrier
  hash hue noise light along place pixel count time turn seed gradient_reed weft_time weft_colour weft_scatter
  gl_FragCoord gl_Position webgl_a _webgl_b GL_ES __LINE__ __VERSION__ a__b _ __ _a a_ A oar fma frexp ldexp
  texture2D textureCube round_ average dvec2x`
  .split(/\s+/)
  .filter((word) => word !== '');

describe('G13 our parser reads what the grammar of the standard reads', () => {
  const sources: [string, string][] = [
    ['the common functions', commonSource],
    ...libraryPatterns.map((pattern): [string, string] => [referenceOf(pattern), pattern.source]),
  ];

  test.each(sources)('%s', (_, source) => {
    expect(ourShape(source)).toEqual(theirShape(source));
  });

  test('60 generated patterns: the same statements, the same brackets', () => {
    // The other parser takes very long over deep expressions; the shorter sources hold every kind of them.
    const short = generated.filter(({ source }) => source.length < 900).slice(0, 60);
    expect(short).toHaveLength(60);
    for (const { source } of short) expect(ourShape(source), source).toEqual(theirShape(source));
  });

  test('precedence and associativity', () => {
    const source = `bool f() {
  return a || b ^^ c && d == e != g < h <= i + j - k * l / m % -n.x;
}
float g() { return a ? b : c ? d : e; }
float h() { return a - b - c / d / e * (f - (g)); }
`;
    expect(ourShape(source)).toEqual(theirShape(source));
    expect(ourShape(source)[1]).toBe(
      'return (a || (b ^^ (c && ((d == e) != ((g < h) <= ((i + j) - (((k * l) / m) % (-n.x))))))))',
    );
  });
});
