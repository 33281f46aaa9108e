/**
 * Built-in functions by GLSL ES 3.00 chapter 8, and `hash`, our one primitive beside them.
 *
 * In a signature `g` stands for float, vec2 or vec3, the same throughout one call; `i` is int, `f` float.
 */
import type { TypeName } from '../parse/words.ts';

type Letter = 'g' | 'f' | 'i';

interface Signature {
  readonly takes: readonly Letter[];
  readonly gives: Letter;
}

const s = (text: string): Signature[] =>
  text.split(' ').map((signature) => {
    const [takes, gives] = signature.split('>');
    return { takes: [...takes!] as Letter[], gives: gives as Letter };
  });

const table = {
  abs: s('g>g i>i'),
  sign: s('g>g i>i'),
  floor: s('g>g'),
  ceil: s('g>g'),
  fract: s('g>g'),
  mod: s('gg>g gf>g'),
  min: s('gg>g gf>g ii>i'),
  max: s('gg>g gf>g ii>i'),
  clamp: s('ggg>g gff>g iii>i'),
  mix: s('ggg>g ggf>g'),
  step: s('gg>g fg>g'),
  smoothstep: s('ggg>g ffg>g'),
  sqrt: s('g>g'),
  inversesqrt: s('g>g'),
  sin: s('g>g'),
  cos: s('g>g'),
  atan: s('gg>g g>g'),
  pow: s('gg>g'),
  exp2: s('g>g'),
  log2: s('g>g'),
  length: s('g>f'),
  distance: s('gg>f'),
  dot: s('gg>f'),
  normalize: s('g>g'),
  radians: s('g>g'),
  degrees: s('g>g'),
  hash: s('i>f ii>f'),
} satisfies Record<string, Signature[]>;

export type BuiltinName = keyof typeof table;
export const builtinNames = Object.keys(table) as BuiltinName[];

/**
 * Built-ins of GLSL ES 3.00 that the language does not have: no function may take their names either. Behind
 * them stand those of later versions and of extensions that compilers know beforehand (found with glslang).
 */
const refused: ReadonlySet<string> = new Set(
  `tan asin acos sinh cosh tanh asinh acosh atanh exp log trunc round roundEven modf isnan isinf
  floatBitsToInt floatBitsToUint intBitsToFloat uintBitsToFloat packSnorm2x16 unpackSnorm2x16 packUnorm2x16
  unpackUnorm2x16 packHalf2x16 unpackHalf2x16 cross faceforward reflect refract matrixCompMult outerProduct
  transpose determinant inverse lessThan lessThanEqual greaterThan greaterThanEqual equal notEqual any all not
  textureSize texture textureProj textureLod textureOffset texelFetch texelFetchOffset textureProjOffset
  textureLodOffset textureProjLod textureProjLodOffset textureGrad textureGradOffset textureProjGrad
  textureProjGradOffset dFdx dFdy fwidth main
  textureGather textureGatherOffset textureGatherOffsets imageLoad imageStore memoryBarrier controlBarrier
  texture2DLodEXT texture2DProjLodEXT textureCubeLodEXT texture2DGradEXT texture2DProjGradEXT textureCubeGradEXT
  shadow2DEXT shadow2DProjEXT beginInvocationInterlockARB endInvocationInterlockARB helperInvocationEXT
  debugPrintfEXT countLeadingZeros countTrailingZeros absoluteDifference addSaturate subtractSaturate average
  averageRounded multiply32x16`.split(/\s+/),
);

export function isBuiltin(name: string): name is BuiltinName {
  return Object.hasOwn(table, name);
}

export function isRefusedBuiltin(name: string): boolean {
  return refused.has(name);
}

/** The result type of a call, or undefined where no signature fits. */
export function resultOfBuiltin(name: BuiltinName, args: readonly TypeName[]): TypeName | undefined {
  for (const { takes, gives } of table[name]) {
    if (takes.length !== args.length) continue;
    const generic = args[takes.indexOf('g')];
    if (generic !== undefined && takes.includes('g') && (generic === 'int' || generic === 'bool')) continue;
    const typeOf: Record<Letter, TypeName | undefined> = { g: generic, f: 'float', i: 'int' };
    if (takes.every((letter, i) => typeOf[letter] === args[i])) return typeOf[gives];
  }
  return undefined;
}

/** `mod(g, g), mod(g, float)`, for advice. */
export function describeBuiltin(name: BuiltinName): string {
  const words: Record<Letter, string> = { g: 'float or vec', f: 'float', i: 'int' };
  return table[name]
    .map(({ takes }) => `${name}(${takes.map((letter) => words[letter]).join(', ')})`)
    .join(' or ');
}
