/** Words with a meaning in GLSL ES 3.00 (Khronos, section 3.6): the ones we use, and the ones no name may take. */

export const typeWords = ['float', 'vec2', 'vec3', 'int', 'bool'] as const;
export const precisionWords = ['lowp', 'mediump'] as const;

export type TypeName = (typeof typeWords)[number];
export type Precision = (typeof precisionWords)[number];

export function isTypeWord(word: string): word is TypeName {
  return (typeWords as readonly string[]).includes(word);
}

export function isPrecisionWord(word: string): word is Precision {
  return (precisionWords as readonly string[]).includes(word);
}

const usedKeywords = 'const uniform if else for return true false';

/**
 * Keywords of the standard that are outside our subset, words it reserves for later, and words of later
 * versions that compilers refuse in this one too.
 */
const refusedKeywords = `
  layout centroid flat smooth break continue do while switch case default in out inout void invariant
  discard mat2 mat3 mat4 mat2x2 mat2x3 mat2x4 mat3x2 mat3x3 mat3x4 mat4x2 mat4x3 mat4x4 vec4 ivec2 ivec3
  ivec4 bvec2 bvec3 bvec4 uint uvec2 uvec3 uvec4 precision highp sampler2D sampler3D samplerCube
  sampler2DShadow samplerCubeShadow sampler2DArray sampler2DArrayShadow isampler2D isampler3D isamplerCube
  isampler2DArray usampler2D usampler3D usamplerCube usampler2DArray struct
  attribute varying coherent volatile restrict readonly writeonly resource atomic_uint noperspective patch
  sample subroutine common partition active asm class union enum typedef template this goto inline noinline
  volatile public static extern external interface long short double half fixed unsigned superp input output
  hvec2 hvec3 hvec4 dvec2 dvec3 dvec4 fvec2 fvec3 fvec4 sampler3DRect filter image1D image2D image3D
  imageCube iimage1D iimage2D iimage3D iimageCube uimage1D uimage2D uimage3D uimageCube image1DArray
  image2DArray iimage1DArray iimage2DArray uimage1DArray uimage2DArray imageBuffer iimageBuffer uimageBuffer
  sampler1D sampler1DShadow sampler1DArray sampler1DArrayShadow isampler1D isampler1DArray usampler1D
  usampler1DArray sampler2DRect sampler2DRectShadow isampler2DRect usampler2DRect samplerBuffer
  isamplerBuffer usamplerBuffer sampler2DMS isampler2DMS usampler2DMS sampler2DMSArray isampler2DMSArray
  usampler2DMSArray sizeof cast namespace using shared buffer
  dmat2 dmat3 dmat4 dmat2x2 dmat2x3 dmat2x4 dmat3x2 dmat3x3 dmat3x4 dmat4x2 dmat4x3 dmat4x4 samplerCubeArray
  samplerCubeArrayShadow isamplerCubeArray usamplerCubeArray imageCubeArray iimageCubeArray uimageCubeArray
  image2DRect iimage2DRect uimage2DRect image2DMS image2DMSArray precise`;

const split = (text: string) => text.split(/\s+/).filter((word) => word !== '');

export const keywords: ReadonlySet<string> = new Set([
  ...split(usedKeywords),
  ...typeWords,
  ...precisionWords,
]);

export const refusedWords: ReadonlySet<string> = new Set(split(refusedKeywords));

/** Sections 3.4 and 3.7 of the standard, the WebGL 2 specification, and the names of our own prelude. */
export function isReservedName(name: string): boolean {
  return name.includes('__') || /^(gl|GL|_?webgl|weft)_/.test(name);
}

/** WebGL 2 takes names of up to 1024 characters. */
export const longestName = 1024;
