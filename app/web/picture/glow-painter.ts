/** Draws glowing spots with WebGL 2. What it holds on the graphics card can be made again at any time. */
import { linkProgram, programs, softTexture } from './gl.ts';

/** Halos are so soft that one dot stands for this many, each way: on a weak computer they cost the most. */
const haloCoarseness = 4;

export type LayerName = 'body' | 'halo' | 'core';

/** Of one kind of light around every spot. */
export interface Layer {
  /** Where it has faded away, in CSS pixels. */
  readonly radius: number;
  readonly strength: number;
  /** Share of the radius behind which it is too faint for a screen to show. */
  readonly reach: number;
}

export interface Spots {
  /** x and y (down) of each, in CSS pixels; not more than 16384 of them. */
  readonly places: Float32Array;
  /** Colour of each part when it is unlit, as `packed` has it. */
  readonly bodies: Uint32Array;
}

/** A program, and where its uniforms are. */
interface Glow {
  readonly program: WebGLProgram;
  readonly size: WebGLUniformLocation | null;
  readonly radius: WebGLUniformLocation | null;
  readonly reach: WebGLUniformLocation | null;
  readonly strength: WebGLUniformLocation | null;
}

/** Red, green and blue, 0..255, as four bytes that lie in memory in that order on every computer there is. */
export const packed = (red: number, green: number, blue: number) => red | (green << 8) | (blue << 16);

export class GlowPainter {
  private readonly glows: Record<LayerName, Glow>;
  private readonly over: WebGLProgram;
  private readonly places: WebGLBuffer;
  private readonly bodies: WebGLBuffer;
  private readonly lights: WebGLBuffer;
  private readonly corners: WebGLBuffer;
  private readonly ofBodies: WebGLVertexArrayObject;
  private readonly ofLights: WebGLVertexArrayObject;
  private readonly haloImage: WebGLTexture;
  private readonly haloTarget: WebGLFramebuffer;
  private quadruple = new Uint32Array(0);
  private count = 0;

  /** @throws if the browser cannot compile the shaders */
  constructor(private readonly gl: WebGL2RenderingContext) {
    this.glows = { body: this.glow('body'), halo: this.glow('halo'), core: this.glow('core') };
    this.over = linkProgram(gl, programs.over);
    this.places = gl.createBuffer();
    this.bodies = gl.createBuffer();
    this.lights = gl.createBuffer();
    this.corners = gl.createBuffer();
    this.ofBodies = this.squares(this.bodies);
    this.ofLights = this.squares(this.lights);
    this.haloImage = softTexture(gl);
    this.haloTarget = gl.createFramebuffer();
    gl.bindFramebuffer(gl.FRAMEBUFFER, this.haloTarget);
    gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, this.haloImage, 0);
    gl.blendFunc(gl.ONE, gl.ONE);
    gl.clearColor(0, 0, 0, 0);
  }

  /** To be called whenever the canvas has another size. */
  resize(): void {
    const { gl } = this;
    const { width, height } = this.haloSize();
    gl.bindTexture(gl.TEXTURE_2D, this.haloImage);
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA8, width, height, 0, gl.RGBA, gl.UNSIGNED_BYTE, null);
  }

  place({ places, bodies }: Spots): void {
    const { gl } = this;
    this.count = places.length / 2;
    const quadruple = new Float32Array(this.count * 8);
    for (let at = 0; at < quadruple.length; at++) quadruple[at] = places[2 * (at >> 3) + (at & 1)]!;
    gl.bindBuffer(gl.ARRAY_BUFFER, this.places);
    gl.bufferData(gl.ARRAY_BUFFER, quadruple, gl.STATIC_DRAW);
    this.fill(this.bodies, bodies);
    const triangles = [0, 1, 2, 2, 1, 3];
    const corners = Uint16Array.from({ length: this.count * 6 }, (_, i) => {
      return 4 * Math.floor(i / 6) + triangles[i % 6]!;
    });
    // Which corners make the triangles is remembered by the list of attributes that is bound.
    for (const squares of [this.ofBodies, this.ofLights]) {
      gl.bindVertexArray(squares);
      gl.bindBuffer(gl.ELEMENT_ARRAY_BUFFER, this.corners);
    }
    gl.bufferData(gl.ELEMENT_ARRAY_BUFFER, corners, gl.STATIC_DRAW);
    gl.bindVertexArray(null);
  }

  /**
   * @param lights colour of each spot, as `packed` has it
   * @param across width and height of the canvas in CSS pixels
   */
  draw(lights: Uint32Array, layers: Record<LayerName, Layer>, across: readonly [number, number]): void {
    const { gl } = this;
    this.fill(this.lights, lights);
    const drawLayer = (name: LayerName, spots: WebGLVertexArrayObject) => {
      const { program, size, radius, reach, strength } = this.glows[name];
      this.by(program);
      gl.uniform2f(size, ...across);
      gl.uniform1f(radius, layers[name].radius);
      gl.uniform1f(reach, layers[name].reach);
      gl.uniform1f(strength, layers[name].strength);
      gl.bindVertexArray(spots);
      gl.drawElements(gl.TRIANGLES, this.count * 6, gl.UNSIGNED_SHORT, 0);
      gl.bindVertexArray(null);
    };

    this.into(this.haloTarget, this.haloSize());
    gl.clear(gl.COLOR_BUFFER_BIT);
    gl.enable(gl.BLEND);
    drawLayer('halo', this.ofLights);

    this.into(null, gl.canvas);
    gl.disable(gl.BLEND);
    this.by(this.over);
    gl.drawArrays(gl.TRIANGLES, 0, 3);
    gl.enable(gl.BLEND);
    drawLayer('body', this.ofBodies);
    drawLayer('core', this.ofLights);
  }

  private glow(name: LayerName): Glow {
    const program = linkProgram(this.gl, programs[name]);
    const uniform = (uniformName: string) => this.gl.getUniformLocation(program, uniformName);
    return {
      program,
      size: uniform('size'),
      radius: uniform('radius'),
      reach: uniform('reach'),
      strength: uniform('strength'),
    };
  }

  private by(program: WebGLProgram): void {
    // biome-ignore lint/correctness/useHookAtTopLevel: a program of WebGL, not a hook
    this.gl.useProgram(program);
  }

  private into(target: WebGLFramebuffer | null, { width, height }: { width: number; height: number }): void {
    this.gl.bindFramebuffer(this.gl.FRAMEBUFFER, target);
    this.gl.viewport(0, 0, width, height);
  }

  private haloSize(): { width: number; height: number } {
    const { width, height } = this.gl.canvas;
    return { width: Math.ceil(width / haloCoarseness), height: Math.ceil(height / haloCoarseness) };
  }

  /** One colour a spot becomes one a corner. */
  private fill(buffer: WebGLBuffer, colours: Uint32Array): void {
    const { gl } = this;
    if (this.quadruple.length !== colours.length * 4) this.quadruple = new Uint32Array(colours.length * 4);
    for (let i = 0, at = 0; i < colours.length; i++, at += 4) {
      this.quadruple.fill(colours[i]!, at, at + 4);
    }
    gl.bindBuffer(gl.ARRAY_BUFFER, buffer);
    gl.bufferData(gl.ARRAY_BUFFER, this.quadruple, gl.DYNAMIC_DRAW);
  }

  /** Places and colours as the two attributes of a glow. */
  private squares(colours: WebGLBuffer): WebGLVertexArrayObject {
    const { gl } = this;
    const squares = gl.createVertexArray();
    gl.bindVertexArray(squares);
    gl.bindBuffer(gl.ARRAY_BUFFER, this.places);
    gl.enableVertexAttribArray(0);
    gl.vertexAttribPointer(0, 2, gl.FLOAT, false, 0, 0);
    gl.bindBuffer(gl.ARRAY_BUFFER, colours);
    gl.enableVertexAttribArray(1);
    gl.vertexAttribPointer(1, 4, gl.UNSIGNED_BYTE, true, 0, 0);
    gl.bindVertexArray(null);
    return squares;
  }
}
