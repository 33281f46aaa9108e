/** The picture: every pixel of the piece as a soft light on a dark bench, drawn by PixiJS. */
import 'pixi.js/unsafe-eval';
import {
  autoDetectRenderer,
  Container,
  Particle,
  ParticleContainer,
  type Renderer,
  Texture,
  type TextureSource,
} from 'pixi.js';
import type { PieceView, ShownFrame } from '../worker/protocol.ts';
import { fitPlaces } from './fit.ts';
import { screenColour } from './light.ts';

/** Pixels across of the soft textures; larger glows are stretched, which nobody sees. */
const textureSize = 128;

/** Sizes in pitches of the strip, strengths as alpha. Chosen by eye on the samples. */
const layers = {
  /** The dark part itself, so that the shape of the piece shows when it is unlit. */
  body: { across: 0.34, least: 2.5, most: 9, alpha: 1 },
  halo: { across: 8, least: 48, most: 260, alpha: 0.42 },
  core: { across: 1.8, least: 11, most: 54, alpha: 1 },
} as const;
type LayerName = keyof typeof layers;

const unlitTint = 0x1e1a15;

export class Scene {
  private readonly stage = new Container();
  private lights: Record<LayerName, Particle[]> = { body: [], halo: [], core: [] };
  private view: PieceView | null = null;
  private width = 1;
  private height = 1;

  private constructor(
    private readonly renderer: Renderer,
    private readonly containers: Record<LayerName, ParticleContainer>,
    private readonly textures: Record<LayerName, Texture<TextureSource>>,
  ) {
    this.stage.addChild(containers.body, containers.halo, containers.core);
  }

  static async create(canvas: HTMLCanvasElement): Promise<Scene> {
    const renderer = await autoDetectRenderer({
      canvas,
      preference: 'webgl',
      // Black, and added to the bench behind it by the style sheet: light only ever adds.
      background: 0x000000,
      antialias: false,
      autoDensity: true,
      resolution: Math.min(2, window.devicePixelRatio),
    });
    const textures = { body: disc(), halo: halo(), core: core() };
    const container = (additive: boolean) =>
      new ParticleContainer({
        dynamicProperties: { color: true, position: false, rotation: false, uvs: false, vertex: false },
        blendMode: additive ? 'add' : 'normal',
      });
    return new Scene(
      renderer,
      { body: container(false), halo: container(true), core: container(true) },
      textures,
    );
  }

  resize(width: number, height: number): void {
    this.width = Math.max(1, width);
    this.height = Math.max(1, height);
    this.renderer.resize(this.width, this.height);
    this.place();
  }

  /** Another piece, or the same one with its pixels elsewhere. */
  show(view: PieceView): void {
    this.view = view;
    this.place();
  }

  light({ drive }: Pick<ShownFrame, 'drive'>): void {
    const { view, lights } = this;
    if (view === null || drive.length !== view.hidden.length * view.channels) return;
    for (let i = 0; i < view.hidden.length; i++) {
      const tint = screenColour(drive, i, view.order);
      lights.halo[i]!.tint = tint;
      lights.core[i]!.tint = tint;
    }
    this.draw();
  }

  draw(): void {
    this.renderer.render(this.stage);
  }

  destroy(): void {
    this.stage.destroy({ children: true });
    for (const texture of Object.values(this.textures)) texture.destroy(true);
    this.renderer.destroy();
  }

  private place(): void {
    const { view } = this;
    if (view === null) return;
    const { spots, pitch } = fitPlaces(view.places, this.width, this.height);
    for (const name of Object.keys(layers) as LayerName[]) {
      const { across, least, most, alpha } = layers[name];
      const size = Math.min(most, Math.max(least, across * pitch)) / textureSize;
      const before = this.lights[name];
      this.lights[name] = Array.from(view.hidden, (hidden, i) => {
        const tint = name === 'body' ? unlitTint : (before[i]?.tint ?? 0);
        return new Particle({
          texture: this.textures[name],
          x: spots[2 * i]!,
          y: spots[2 * i + 1]!,
          anchorX: 0.5,
          anchorY: 0.5,
          scaleX: size,
          scaleY: size,
          alpha: hidden === 1 && name === 'body' ? 0.4 : alpha,
          tint,
        });
      });
      const container = this.containers[name];
      container.particleChildren = this.lights[name];
      container.update();
    }
    this.draw();
  }
}

/** A hard little disc: the part on its strip. */
function disc(): Texture<TextureSource> {
  return painted([
    [0, 1],
    [0.86, 1],
    [1, 0],
  ]);
}

/** Light scattered in fabric and in the eye: bright near the source, with a long tail. */
function halo(): Texture<TextureSource> {
  return painted(falloff((r) => (1 - r) ** 2 / (1 + 14 * r * r)));
}

/** The lit die and its immediate bloom. */
function core(): Texture<TextureSource> {
  return painted(falloff((r) => Math.exp(-6 * r * r) * (1 - r)));
}

function falloff(light: (radius: number) => number): [number, number][] {
  return Array.from({ length: 17 }, (_, i) => [i / 16, light(i / 16)]);
}

/** @param stops radius 0..1 and alpha 0..1 */
function painted(stops: readonly (readonly [number, number])[]): Texture<TextureSource> {
  const canvas = document.createElement('canvas');
  canvas.width = textureSize;
  canvas.height = textureSize;
  const half = textureSize / 2;
  const context = canvas.getContext('2d')!;
  const gradient = context.createRadialGradient(half, half, 0, half, half, half);
  for (const [radius, alpha] of stops) gradient.addColorStop(radius, `rgba(255,255,255,${alpha})`);
  context.fillStyle = gradient;
  context.fillRect(0, 0, textureSize, textureSize);
  return Texture.from(canvas);
}
