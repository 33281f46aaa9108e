/** A real WebGL 2 implementation: headless Chromium, drawing by software, read back as 32 bit floats. */
import { type Browser, chromium, type Page } from 'playwright-core';

export type Uniform =
  | { readonly kind: 'float' | 'int'; readonly value: number }
  | { readonly kind: 'vec3'; readonly value: readonly number[] };

export interface ShaderJob {
  readonly fragment: string;
  /** One fragment a pixel of the zone. */
  readonly width: number;
  /** x and y of each pixel's place. */
  readonly places: readonly number[];
  /** One set of uniforms a row that is drawn. */
  readonly rows: readonly Readonly<Record<string, Uniform>>[];
}

export interface Drawn {
  /** What the shader compiler says, if it refuses. */
  readonly complaint: string | undefined;
  /** R, G, B, A of each fragment, row by row. */
  readonly values: readonly number[];
}

export interface WebGl {
  readonly renderer: string;
  draw(job: ShaderJob): Promise<Drawn>;
  close(): Promise<void>;
}

const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';
const softwareRendering = [
  '--no-sandbox',
  '--use-gl=angle',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
];

export async function openWebGl(): Promise<WebGl> {
  const browser = await chromium.launch({ executablePath, args: softwareRendering });
  try {
    const page = await browser.newPage();
    const renderer = await page.evaluate(prepare);
    return { renderer, draw: (job) => page.evaluate(draw, job), close: () => close(browser, page) };
  } catch (fault) {
    await browser.close();
    throw fault;
  }
}

async function close(browser: Browser, page: Page): Promise<void> {
  await page.close();
  await browser.close();
}

/** Runs in the page. */
function prepare(): string {
  const gl = document.createElement('canvas').getContext('webgl2');
  if (gl === null) throw new Error('this browser has no WebGL 2');
  if (gl.getExtension('EXT_color_buffer_float') === null) throw new Error('no float targets');
  Object.assign(window, { gl });
  const information = gl.getExtension('WEBGL_debug_renderer_info');
  return String(gl.getParameter(information?.UNMASKED_RENDERER_WEBGL ?? gl.RENDERER));
}

/** Runs in the page: nothing from outside is in sight here. */
function draw({ fragment, width, places, rows }: ShaderJob): Drawn {
  const { gl } = window as unknown as { gl: WebGL2RenderingContext };
  const vertex = `#version 300 es
void main() { gl_Position = vec4(vec2(gl_VertexID & 1, gl_VertexID >> 1) * 4.0 - 1.0, 0.0, 1.0); }`;
  const program = gl.createProgram();
  for (const [kind, source] of [
    [gl.VERTEX_SHADER, vertex],
    [gl.FRAGMENT_SHADER, fragment],
  ] as const) {
    const shader = gl.createShader(kind)!;
    gl.shaderSource(shader, source);
    gl.compileShader(shader);
    if (!gl.getShaderParameter(shader, gl.COMPILE_STATUS))
      return { complaint: gl.getShaderInfoLog(shader) ?? '?', values: [] };
    gl.attachShader(program, shader);
  }
  gl.linkProgram(program);
  if (!gl.getProgramParameter(program, gl.LINK_STATUS))
    return { complaint: gl.getProgramInfoLog(program) ?? '?', values: [] };
  gl.useProgram(program);

  const floatTexture = (wide: number, high: number, data: Float32Array | null) => {
    const texture = gl.createTexture();
    gl.bindTexture(gl.TEXTURE_2D, texture);
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA32F, wide, high, 0, gl.RGBA, gl.FLOAT, data);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.NEAREST);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.NEAREST);
    return texture;
  };
  const target = floatTexture(width, 1, null);
  gl.bindFramebuffer(gl.FRAMEBUFFER, gl.createFramebuffer());
  gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, target, 0);
  const texels = new Float32Array(width * 4);
  for (let i = 0; i < width; i++) texels.set(places.slice(i * 2, i * 2 + 2), i * 4);
  floatTexture(width, 1, texels);

  gl.viewport(0, 0, width, 1);
  const values: number[] = [];
  const pixels = new Float32Array(width * 4);
  for (const row of rows) {
    for (const [name, uniform] of Object.entries(row)) {
      const location = gl.getUniformLocation(program, name);
      if (uniform.kind === 'vec3') gl.uniform3fv(location, uniform.value);
      else if (uniform.kind === 'int') gl.uniform1i(location, uniform.value);
      else gl.uniform1f(location, uniform.value);
    }
    gl.drawArrays(gl.TRIANGLES, 0, 3);
    gl.readPixels(0, 0, width, 1, gl.RGBA, gl.FLOAT, pixels);
    values.push(...pixels);
  }
  gl.deleteProgram(program);
  return { complaint: undefined, values };
}
