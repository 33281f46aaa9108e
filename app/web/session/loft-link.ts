/** The page's end of the loft: cloths, power figures, the sketch, the library, proofreading. */
import type { Sketch } from '../../../codegen/sketch.ts';
import type { Diagnostic } from '../../../engine/diagnostic.ts';
import type { ChipName } from '../../../engine/parts/chips.ts';
import type { LibraryPattern } from '../../../engine/pattern/library.ts';
import type { ParameterDescription, Piece } from '../../../engine/piece/schema.ts';
import { differenceOf } from '../worker/difference.ts';
import type { Glimpse } from '../worker/glimpse.ts';
import type { LoftReply, LoftRequest, LookFigures } from '../worker/protocol.ts';
import { ClipLink } from './clip-link.ts';
import { Cloths } from './cloths.ts';
import { startThread } from './start-thread.ts';
import { Store } from './store.ts';
import { SwatchLink } from './swatch-link.ts';

/** While a slider moves, the loft gets a piece this often, or whenever it has woven what the hand holds. */
const editMilliseconds = 120;
/** Power and sketch wait for a rest: nobody reads them while turning something. */
const restMilliseconds = 350;

export interface Power {
  /** One entry a look, or null while it is measured for the first time. */
  readonly looks: readonly LookFigures[] | null;
  readonly warnings: readonly Pick<Diagnostic, 'code' | 'message' | 'advice'>[];
  /** The figures belong to an older edit or another brightness. */
  readonly stale: boolean;
}

export interface SketchState {
  /** Null while it is written for the first time, or where it cannot be. */
  readonly sketch: Sketch | null;
  readonly diagnostics: readonly Diagnostic[];
  readonly board: ChipName | null;
  readonly stale: boolean;
}

export class LoftLink {
  readonly library = new Store<readonly LibraryPattern[]>([]);
  readonly power = new Store<Power>({ looks: null, warnings: [], stale: true });
  readonly sketch = new Store<SketchState>({ sketch: null, diagnostics: [], board: null, stale: true });
  readonly cloths: Cloths;
  readonly swatches: SwatchLink;
  readonly clip: ClipLink;

  private readonly worker: Worker;
  private revision = 0;
  private piece: Piece | null = null;
  /** What the loft was handed last. */
  private held: Piece | null = null;
  private brightness = 0;
  private board: ChipName | null = null;
  private editTimer = 0;
  private handedOver = Number.NEGATIVE_INFINITY;
  private restTimer = 0;
  private readings = 0;
  private readonly glimpses = new Map<string, (glimpse: Glimpse | null) => void>();
  private readonly readers = new Map<number, (diagnostics: readonly Diagnostic[]) => void>();

  /** @param shown the piece as the maker sees it */
  constructor(shown: () => Piece | undefined) {
    this.worker = startThread('loft');
    this.worker.onmessage = ({ data }: MessageEvent<LoftReply>) => this.hear(data);
    this.cloths = new Cloths((request) => this.ask(request), shown);
    this.cloths.onHandServed = () => {
      if (this.editTimer !== 0) this.handOver();
    };
    this.swatches = new SwatchLink((request) => this.ask(request));
    this.clip = new ClipLink((request) => this.ask(request));
  }

  /** @param edited the same piece, changed a little: what there is stays in view until it is worked out anew */
  hold(revision: number, piece: Piece, edited: boolean): void {
    this.revision = revision;
    this.piece = piece;
    if (edited) {
      this.power.merge({ stale: true });
      this.sketch.merge({ stale: true });
      const wait = this.cloths.handServed() ? 0 : this.handedOver + editMilliseconds - performance.now();
      if (wait <= 0) this.handOver();
      else if (this.editTimer === 0) this.editTimer = window.setTimeout(() => this.handOver(), wait);
      return;
    }
    this.brightness = piece.output.startBrightness;
    this.board = piece.board;
    this.power.set({ looks: null, warnings: [], stale: true });
    this.sketch.set({ sketch: null, diagnostics: [], board: piece.board, stale: true });
    this.handOver();
  }

  setBrightness(brightness: number): void {
    this.brightness = brightness;
    this.power.merge({ stale: true });
    this.afterRest();
  }

  setBoard(board: ChipName): void {
    this.board = board;
    this.sketch.merge({ board, stale: true });
    this.afterRest();
  }

  /** The faults of a pattern's source while it is being written. */
  proofread(source: string, parameters: readonly ParameterDescription[]): Promise<readonly Diagnostic[]> {
    const reading = ++this.readings;
    this.ask({ kind: 'proofread', reading, source, parameters });
    return new Promise((resolve) => this.readers.set(reading, resolve));
  }

  /** One frame of a piece that is not on stage; null if it cannot be played. */
  glimpse(name: string, text: string): Promise<Glimpse | null> {
    this.ask({ kind: 'glimpse', name, text });
    return new Promise((resolve) => this.glimpses.set(name, resolve));
  }

  private handOver(): void {
    window.clearTimeout(this.editTimer);
    this.editTimer = 0;
    this.handedOver = performance.now();
    if (this.piece === null) return;
    this.ask({ kind: 'hold', revision: this.revision, difference: differenceOf(this.held, this.piece) });
    this.held = this.piece;
    this.swatches.hold(this.revision, this.piece);
    this.cloths.reweave(this.revision, this.piece, this.brightness);
    this.afterRest();
  }

  private afterRest(): void {
    window.clearTimeout(this.restTimer);
    this.restTimer = window.setTimeout(() => {
      const { revision, piece, brightness, board } = this;
      if (this.editTimer !== 0 || piece === null) return;
      if (this.cloths.brightness !== brightness) this.cloths.reweave(revision, piece, brightness);
      this.ask({ kind: 'measure', revision, brightness });
      this.clip.weigh(revision, brightness);
      this.swatches.weigh(brightness);
      if (board !== null) this.ask({ kind: 'sketch', revision, board });
    }, restMilliseconds);
  }

  private ask(request: LoftRequest): void {
    this.worker.postMessage(request);
  }

  private hear(reply: LoftReply): void {
    switch (reply.kind) {
      case 'library':
        this.library.set(reply.patterns);
        return;
      case 'woven':
        this.cloths.takeRows(reply);
        return;
      case 'currents':
        this.cloths.takeCurrents(reply);
        return;
      case 'glimpsed':
        this.glimpses.get(reply.name)?.(reply.glimpse);
        this.glimpses.delete(reply.name);
        return;
      case 'swatch-drawn':
        this.swatches.takeDrawn(reply);
        return;
      case 'weighed':
        this.swatches.takeWeight(reply);
        return;
      case 'clip-weighed':
        this.clip.take(reply);
        return;
      case 'proofread':
        this.readers.get(reply.reading)?.(reply.diagnostics);
        this.readers.delete(reply.reading);
        return;
      case 'measured':
        if (reply.revision !== this.revision || reply.brightness !== this.brightness) return;
        this.power.set({ looks: reply.looks, warnings: reply.warnings, stale: false });
        return;
      case 'sketched': {
        if (reply.revision !== this.revision || reply.board !== this.board) return;
        const { sketch, diagnostics, board } = reply;
        this.sketch.set({ sketch, diagnostics, board, stale: false });
      }
    }
  }
}
