/**
 * A pattern as one complete GLSL ES 3.00 fragment shader: our prelude, the pattern's own source untouched,
 * and a `main` that colours one pixel of a zone per fragment. Any conforming compiler takes it.
 */
import { levelsOfColour } from '../fixed/gradient.ts';
import type { GradientStops, ParameterDescription } from '../piece/schema.ts';
import commonSource from './library/common.glsl';

/** What the shader reads beside the pattern's own uniforms. The fragment's x is the index in the zone. */
export const shaderUniforms = {
  count: 'weft_count',
  seed: 'weft_seed',
  time: 'weft_time',
  turn: 'weft_turn',
  /** RGBA32F, one texel a pixel: x and y of its place. */
  places: 'weft_places',
} as const;

const given = `#version 300 es
precision mediump float;
precision mediump int;

uniform int ${shaderUniforms.count};
uniform int ${shaderUniforms.seed};
uniform highp float ${shaderUniforms.time};
uniform highp float ${shaderUniforms.turn};
uniform highp sampler2D ${shaderUniforms.places};
out highp vec4 weft_colour;

lowp float along;
lowp vec2 place;
int pixel;
int count;
mediump float time;
lowp float turn;
int seed;

highp uint weft_scatter(highp uint x) {
  x ^= x >> 8;
  x = (x * 0x88b5u) & 0xffffu;
  x ^= x >> 7;
  x = (x * 0xdb2du) & 0xffffu;
  return x ^ (x >> 9);
}

lowp float hash(int a) {
  return float(weft_scatter(uint(a) & 0xffffu)) / 65536.0;
}

lowp float hash(int a, int b) {
  highp uint inner = weft_scatter(uint(b) & 0xffffu);
  return float(weft_scatter((uint(a) + inner) & 0xffffu)) / 65536.0;
}
`;

const main = `void main() {
  pixel = int(gl_FragCoord.x);
  count = ${shaderUniforms.count};
  seed = ${shaderUniforms.seed};
  time = ${shaderUniforms.time};
  turn = ${shaderUniforms.turn};
  along = float(pixel) / float(count);
  place = texelFetch(${shaderUniforms.places}, ivec2(pixel, 0), 0).xy;
  weft_colour = vec4(light(), 1.0);
}
`;

interface ShaderSource {
  readonly source: string;
  readonly parameters: readonly ParameterDescription[];
}

/** @param gradients stops by parameter name; the defaults where one is left out */
export function fragmentShader(
  { source, parameters }: ShaderSource,
  gradients: Readonly<Record<string, GradientStops>> = {},
): string {
  const functions = parameters.flatMap((parameter) =>
    parameter.kind === 'gradient'
      ? [gradientFunction(parameter.name, gradients[parameter.name] ?? parameter.default)]
      : [],
  );
  return [given, commonSource, ...functions, source, main].join('\n');
}

/** Reads as the engine does: the outer colours reach the edges, the last of equal stops wins. */
function gradientFunction(name: string, stops: GradientStops): string {
  const decimal = (value: number) => (Number.isInteger(value) ? `${value}.0` : value.toFixed(9));
  const colour = (text: string) =>
    `vec3(${levelsOfColour(text)
      .map((level) => decimal(level / 255))
      .join(', ')})`;
  const lines = stops.slice(1).map(({ at, colour: to }, i) => {
    const { at: from, colour: before } = stops[i]!;
    if (at === from) return '';
    const part = `(x - ${decimal(from)}) / ${decimal(at - from)}`;
    return `  if (x < ${decimal(at)}) return mix(${colour(before)}, ${colour(to)}, ${part});\n`;
  });
  const [first, last] = [stops[0]!, stops.at(-1)!];
  return `lowp vec3 gradient_${name}(lowp float at) {
  mediump float x = clamp(at, 0.0, 1.0);
  if (x < ${decimal(first.at)}) return ${colour(first.colour)};
${lines.join('')}  return ${colour(last.colour)};
}
`;
}
