/** The picture: every pixel of the piece as a soft light on a dark bench. */
import type { PieceView, ShownFrame } from '../worker/protocol.ts';
import { fitPlaces } from './fit.ts';
import { GlowPainter, type Layer, type LayerName, packed } from './glow-painter.ts';
import { dimmed, screenColour } from './light.ts';

interface LayerLook extends Pick<Layer, 'strength' | 'reach'> {
  /** In pitches of the strip, and its bounds in CSS pixels. */
  readonly across: number;
  readonly least: number;
  readonly most: number;
}

/** Chosen by eye on the samples. */
const looks: Record<LayerName, LayerLook> = {
  /** The dark part itself, so that the shape of the piece shows when it is unlit. */
  body: { across: 0.34, least: 2.5, most: 9, strength: 1, reach: 1 },
  halo: { across: 8, least: 48, most: 260, strength: 0.42, reach: 0.82 },
  core: { across: 1.8, least: 11, most: 54, strength: 1, reach: 0.74 },
};

const unlit = [40, 35, 28] as const;
/** What is left of a part that is wired but never lit. */
const hiddenShare = 0.4;
/** What is left of a light that another is shown by itself beside. */
const asideShare = 0.1;
/** More dots a CSS pixel than this nobody sees in a glow. */
const mostDots = 2;

export class Scene {
  private painter: GlowPainter | null = null;
  private view: PieceView | null = null;
  /** Pixels in the spotlight; null for all. */
  private inLight: ReadonlySet<number> | null = null;
  /** Colour of each pixel on the screen. */
  private lights = new Uint32Array(0);
  private layers: Record<LayerName, Layer> | null = null;
  private width = 1;
  private height = 1;
  private request = 0;

  /** @throws if this browser cannot draw it */
  constructor(private readonly canvas: HTMLCanvasElement) {
    const gl = canvas.getContext('webgl2', { antialias: false, depth: false });
    if (gl === null) throw new Error('This browser has no WebGL 2.');
    this.painter = new GlowPainter(gl);
    canvas.addEventListener('webglcontextlost', this.lose);
    canvas.addEventListener('webglcontextrestored', this.restore);
  }

  /** @param width and height in CSS pixels */
  resize(width: number, height: number): void {
    this.width = Math.max(1, width);
    this.height = Math.max(1, height);
    const dots = Math.min(mostDots, window.devicePixelRatio);
    this.canvas.width = Math.round(this.width * dots);
    this.canvas.height = Math.round(this.height * dots);
    this.painter?.resize();
    this.place();
  }

  /** Another piece, or the same one with its pixels elsewhere. */
  show(view: PieceView): void {
    this.view = view;
    if (this.lights.length !== view.hidden.length) this.lights = new Uint32Array(view.hidden.length);
    this.place();
  }

  /** Only these shine, from the next frame on; all others are dimmed. */
  single(pixels: Iterable<number> | null): void {
    this.inLight = pixels === null ? null : new Set(pixels);
  }

  light({ drive }: Pick<ShownFrame, 'drive'>): void {
    const { view, lights } = this;
    if (view === null || drive.length !== view.hidden.length * view.channels) return;
    for (let i = 0; i < lights.length; i++) {
      const full = screenColour(drive, i, view.order);
      const colour = this.inLight === null || this.inLight.has(i) ? full : dimmed(full, asideShare);
      lights[i] = packed(colour >> 16, (colour >> 8) & 255, colour & 255);
    }
    this.draw();
  }

  /** With the next frame of the browser, however often it is asked for until then. */
  draw(): void {
    this.request ||= requestAnimationFrame(() => {
      this.request = 0;
      const { painter, layers, lights, width, height } = this;
      if (layers !== null) painter?.draw(lights, layers, [width, height]);
    });
  }

  destroy(): void {
    cancelAnimationFrame(this.request);
    this.canvas.removeEventListener('webglcontextlost', this.lose);
    this.canvas.removeEventListener('webglcontextrestored', this.restore);
    this.painter = null;
  }

  private place(): void {
    const { view, painter } = this;
    if (view === null) return;
    const { spots, pitch } = fitPlaces(view.places, this.width, this.height);
    const layer = (name: LayerName): Layer => {
      const { across, least, most, ...rest } = looks[name];
      return { ...rest, radius: Math.min(most, Math.max(least, across * pitch)) / 2 };
    };
    this.layers = { body: layer('body'), halo: layer('halo'), core: layer('core') };
    painter?.place({ places: spots, bodies: bodiesOf(view) });
    this.draw();
  }

  /** The browser may take the graphics card away, and gives it back empty. */
  private readonly lose = (event: Event) => {
    event.preventDefault();
    this.painter = null;
  };

  private readonly restore = () => {
    this.painter = new GlowPainter(this.canvas.getContext('webgl2')!);
    this.painter.resize();
    this.place();
  };
}

function bodiesOf({ hidden }: PieceView): Uint32Array {
  return Uint32Array.from(hidden, (isHidden) => {
    const share = isHidden === 1 ? hiddenShare : 1;
    return packed(...(unlit.map((channel) => Math.round(channel * share)) as [number, number, number]));
  });
}
