/** Draws glowing spots with WebGL 2. What it holds on the graphics card can be made again at any time. */
import { falloffImage, falloffs, type LayerName } from './falloff.ts';
import { linkProgram, programs, softTexture } from './gl.ts';

/** Dots across of the images of the falloffs; they are stretched, which nobody sees. */
const falloffAcross = 64;
/** Halos are so soft that one dot stands for this many, each way: on a weak computer they cost the most. */
const haloCoarseness = 4;

export interface Spots {
  /** x and y (down) of each, in CSS pixels. */
  readonly places: Float32Array;
  /** Red, green, blue and an unused byte of each part when it is unlit. */
  readonly bodies: Uint8Array;
}

/** Of one kind of light around every spot. */
export interface Layer {
  readonly radius: number;
  readonly strength: number;
}

export class GlowPainter {
  private readonly glow: WebGLProgram;
  private readonly over: WebGLProgram;
  private readonly falloffs: Record<LayerName, WebGLTexture>;
  private readonly places: WebGLBuffer;
  private readonly bodies: WebGLBuffer;
  private readonly lights: WebGLBuffer;
  private readonly ofBodies: WebGLVertexArrayObject;
  private readonly ofLights: WebGLVertexArrayObject;
  private readonly haloImage: WebGLTexture;
  private readonly haloTarget: WebGLFramebuffer;
  private count = 0;

  /** @throws if the browser cannot compile the shaders */
  constructor(private readonly gl: WebGL2RenderingContext) {
    this.glow = linkProgram(gl, programs.glow);
    this.over = linkProgram(gl, programs.over);
    this.falloffs = { body: this.falloff('body'), halo: this.falloff('halo'), core: this.falloff('core') };
    this.places = gl.createBuffer();
    this.bodies = gl.createBuffer();
    this.lights = gl.createBuffer();
    this.ofBodies = this.instances(this.bodies);
    this.ofLights = this.instances(this.lights);
    this.haloImage = softTexture(gl);
    this.haloTarget = gl.createFramebuffer();
    gl.bindFramebuffer(gl.FRAMEBUFFER, this.haloTarget);
    gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, this.haloImage, 0);
    gl.enable(gl.BLEND);
    gl.clearColor(0, 0, 0, 1);
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
    gl.bindBuffer(gl.ARRAY_BUFFER, this.places);
    gl.bufferData(gl.ARRAY_BUFFER, places, gl.STATIC_DRAW);
    gl.bindBuffer(gl.ARRAY_BUFFER, this.bodies);
    gl.bufferData(gl.ARRAY_BUFFER, bodies, gl.STATIC_DRAW);
  }

  /**
   * @param lights red, green, blue and an unused byte of each spot
   * @param across width and height of the canvas in CSS pixels
   */
  draw(lights: Uint8Array, layers: Record<LayerName, Layer>, across: readonly [number, number]): void {
    const { gl } = this;
    gl.bindBuffer(gl.ARRAY_BUFFER, this.lights);
    gl.bufferData(gl.ARRAY_BUFFER, lights, gl.DYNAMIC_DRAW);
    this.by(this.glow);
    gl.uniform2f(gl.getUniformLocation(this.glow, 'size'), ...across);

    gl.blendFunc(gl.ONE, gl.ONE);
    this.into(this.haloTarget, this.haloSize());
    this.drawLayer('halo', layers.halo, this.ofLights);

    this.into(null, gl.canvas);
    gl.blendEquation(gl.MAX);
    this.drawLayer('body', layers.body, this.ofBodies);
    gl.blendEquation(gl.FUNC_ADD);
    this.drawLayer('core', layers.core, this.ofLights);
    this.by(this.over);
    gl.bindTexture(gl.TEXTURE_2D, this.haloImage);
    gl.drawArrays(gl.TRIANGLES, 0, 3);
  }

  private by(program: WebGLProgram): void {
    // biome-ignore lint/correctness/useHookAtTopLevel: a program of WebGL, not a hook
    this.gl.useProgram(program);
  }

  private drawLayer(name: LayerName, { radius, strength }: Layer, spots: WebGLVertexArrayObject): void {
    const { gl } = this;
    gl.uniform1f(gl.getUniformLocation(this.glow, 'radius'), radius);
    gl.uniform1f(gl.getUniformLocation(this.glow, 'strength'), strength);
    gl.bindTexture(gl.TEXTURE_2D, this.falloffs[name]);
    gl.bindVertexArray(spots);
    gl.drawArraysInstanced(gl.TRIANGLE_STRIP, 0, 4, this.count);
    gl.bindVertexArray(null);
  }

  private into(target: WebGLFramebuffer | null, { width, height }: { width: number; height: number }): void {
    const { gl } = this;
    gl.bindFramebuffer(gl.FRAMEBUFFER, target);
    gl.viewport(0, 0, width, height);
    gl.clear(gl.COLOR_BUFFER_BIT);
  }

  private haloSize(): { width: number; height: number } {
    const { width, height } = this.gl.canvas;
    return { width: Math.ceil(width / haloCoarseness), height: Math.ceil(height / haloCoarseness) };
  }

  private falloff(name: LayerName): WebGLTexture {
    const { gl } = this;
    const texture = softTexture(gl);
    const image = falloffImage(falloffs[name], falloffAcross);
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.R8, falloffAcross, falloffAcross, 0, gl.RED, gl.UNSIGNED_BYTE, image);
    return texture;
  }

  /** Places and colours as the two attributes of `programs.glow`, one of each an instance. */
  private instances(colours: WebGLBuffer): WebGLVertexArrayObject {
    const { gl } = this;
    const instances = gl.createVertexArray();
    gl.bindVertexArray(instances);
    gl.bindBuffer(gl.ARRAY_BUFFER, this.places);
    gl.enableVertexAttribArray(0);
    gl.vertexAttribPointer(0, 2, gl.FLOAT, false, 0, 0);
    gl.vertexAttribDivisor(0, 1);
    gl.bindBuffer(gl.ARRAY_BUFFER, colours);
    gl.enableVertexAttribArray(1);
    gl.vertexAttribPointer(1, 4, gl.UNSIGNED_BYTE, true, 0, 0);
    gl.vertexAttribDivisor(1, 1);
    gl.bindVertexArray(null);
    return instances;
  }
}
