/** The little of WebGL 2 that the picture needs. */

/**
 * A square of four corners for each pixel of the piece, told apart by their numbers. Not by instances: where a
 * processor stands in for the graphics card, each of those is a drawing of its own.
 */
const glowVertex = `#version 300 es
layout(location = 0) in vec2 spot;
layout(location = 1) in vec4 light;
uniform vec2 size;
uniform float radius;
uniform float reach;
uniform float strength;
out vec2 at;
flat out vec3 tint;
void main() {
  vec2 corner = vec2(gl_VertexID & 1, (gl_VertexID >> 1) & 1) * 2.0 - 1.0;
  at = corner * reach;
  tint = light.rgb * strength;
  vec2 place = (spot + at * radius) / size * 2.0 - 1.0;
  // What is dark costs nothing: its square lies outside.
  gl_Position = light.rgb == vec3(0.0) ? vec4(2.0, 2.0, 2.0, 1.0) : vec4(place.x, -place.y, 0.0, 1.0);
}`;

/** @param fading light at a distance from the middle, from `near`: 1 there, 0 at the edge */
const glowFragment = (fading: string) => `#version 300 es
precision mediump float;
in vec2 at;
flat in vec3 tint;
out vec4 colour;
void main() {
  float near = max(0.0, 1.0 - dot(at, at));
  vec3 lit = tint * (${fading});
  // Light hides of the bench behind it what it outshines: as good as added, for less.
  colour = vec4(lit, max(lit.r, max(lit.g, lit.b)));
}`;

/** One triangle over everything. */
const overVertex = `#version 300 es
out vec2 at;
void main() {
  at = vec2(gl_VertexID & 1, gl_VertexID >> 1) * 2.0;
  gl_Position = vec4(at * 2.0 - 1.0, 0.0, 1.0);
}`;

const overFragment = `#version 300 es
precision mediump float;
uniform sampler2D image;
in vec2 at;
out vec4 colour;
void main() {
  colour = texture(image, at);
}`;

/**
 * Vertex and fragment shaders. How light fades was chosen by eye on the samples, in terms that cost little
 * where a processor stands in for the graphics card: no roots, no powers, no textures.
 */
export const programs = {
  /** A hard little disc: the part on its strip. */
  body: [glowVertex, glowFragment('min(1.0, near * 4.0)')],
  /** Light scattered in fabric and in the eye: bright near the source, with a long tail. */
  halo: [glowVertex, glowFragment('near * near / (37.0 - 36.0 * near)')],
  /** The lit die and its immediate bloom. */
  core: [glowVertex, glowFragment('near * near * near * near * near * near * near * near')],
  /** The halos, drawn small, as the ground for the rest. */
  over: [overVertex, overFragment],
} as const;

/** @throws with the browser's words if it cannot compile them */
export function linkProgram(
  gl: WebGL2RenderingContext,
  [vertex, fragment]: readonly [string, string],
): WebGLProgram {
  const program = gl.createProgram();
  for (const [kind, source] of [
    [gl.VERTEX_SHADER, vertex],
    [gl.FRAGMENT_SHADER, fragment],
  ] as const) {
    const shader = gl.createShader(kind)!;
    gl.shaderSource(shader, source);
    gl.compileShader(shader);
    gl.attachShader(program, shader);
  }
  gl.linkProgram(program);
  // A lost context links nothing and has nothing to say; it is drawn anew when it comes back.
  if (!gl.getProgramParameter(program, gl.LINK_STATUS) && !gl.isContextLost()) {
    throw new Error(gl.getProgramInfoLog(program) ?? 'The shaders do not link.');
  }
  return program;
}

/** A texture that is read between its dots, and ends at its edges. */
export function softTexture(gl: WebGL2RenderingContext): WebGLTexture {
  const texture = gl.createTexture();
  gl.bindTexture(gl.TEXTURE_2D, texture);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.LINEAR);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.LINEAR);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE);
  gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE);
  return texture;
}
