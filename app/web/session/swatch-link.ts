/** Swatches: their sheets, drawn once for each pattern, and what they weigh on the open piece. */
import type { PatternDefinition, Piece } from '../../../engine/piece/schema.ts';
import type { LoftReply, LoftRequest } from '../worker/protocol.ts';
import type { SwatchWeight } from '../worker/weigh.ts';
import { Store } from './store.ts';

/** Levels of a swatch, row by row; null until they come, and where the pattern cannot be played. */
export type SwatchSheet = Store<Uint8Array | null>;

export interface Weights {
  /** Of each pattern that has been weighed. */
  readonly of: ReadonlyMap<string, SwatchWeight>;
  /** The brightness at which that was. */
  readonly brightness: number;
}

type Drawn = Extract<LoftReply, { kind: 'swatch-drawn' }>;
type Weighed = Extract<LoftReply, { kind: 'weighed' }>;

export class SwatchLink {
  readonly weights = new Store<Weights>({ of: new Map(), brightness: 0 });

  private readonly fromLibrary = new Map<string, SwatchSheet>();
  /** Edits share what they do not touch, so that a pattern is the same object until it is rewritten. */
  private readonly ofOwn = new WeakMap<PatternDefinition, SwatchSheet>();
  private readonly awaited = new Map<string, SwatchSheet>();
  private asked = 0;
  private revision = 0;
  private piece: Piece | null = null;
  private wanted: readonly string[] = [];
  /** All that the weights asked for last depend on. */
  private basis = '';
  private readonly unweighed = new Set<string>();
  private brightness = 0;

  constructor(private readonly ask: (request: LoftRequest) => void) {}

  /** @param own where the name is one of the piece's own patterns */
  sheetOf(pattern: string, own: PatternDefinition | null): SwatchSheet {
    const known = own === null ? this.fromLibrary.get(pattern) : this.ofOwn.get(own);
    if (known !== undefined) return known;
    const sheet: SwatchSheet = new Store<Uint8Array | null>(null);
    if (own === null) this.fromLibrary.set(pattern, sheet);
    else this.ofOwn.set(own, sheet);
    const swatch = String(this.asked++);
    this.awaited.set(swatch, sheet);
    this.ask({ kind: 'draw-swatch', swatch, pattern, own: own === null ? [] : [own] });
    return sheet;
  }

  /** These patterns are in view, and kept weighed until the next call. */
  want(patterns: readonly string[]): void {
    this.wanted = patterns;
    this.weigh(this.brightness);
  }

  /** The loft has been handed another piece, or the same one with an edit, and has dropped what it did. */
  hold(revision: number, piece: Piece): void {
    this.revision = revision;
    this.piece = piece;
    if (this.unweighed.size > 0) this.basis = '';
  }

  /** Asks for what is in view, if anything it depends on has changed. */
  weigh(brightness: number): void {
    this.brightness = brightness;
    const { piece, wanted, revision } = this;
    if (piece === null || wanted.length === 0) return;
    const { board, lines, output, supply, tickMilliseconds, patterns } = piece;
    const basis = JSON.stringify([
      wanted,
      brightness,
      board,
      tickMilliseconds,
      lines,
      output,
      supply,
      patterns,
    ]);
    if (basis === this.basis) return;
    this.basis = basis;
    for (const pattern of wanted) this.unweighed.add(pattern);
    this.ask({ kind: 'weigh', revision, brightness, patterns: wanted });
  }

  takeDrawn({ swatch, levels }: Drawn): void {
    this.awaited.get(swatch)?.set(levels);
    this.awaited.delete(swatch);
  }

  takeWeight({ brightness, pattern, weight }: Weighed): void {
    if (brightness !== this.brightness) return;
    this.unweighed.delete(pattern);
    const of = new Map(this.weights.get().of);
    if (weight === null) of.delete(pattern);
    else of.set(pattern, weight);
    this.weights.set({ of, brightness });
  }
}
