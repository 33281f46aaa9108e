/** The loft: slow work on the piece that is on stage, one short slice after the other. */
import { generateSketch } from '../../../codegen/sketch.ts';
import { prepareScore } from '../../../engine/look/prepare.ts';
import type { Score } from '../../../engine/look/score.ts';
import type { ChipName } from '../../../engine/parts/chips.ts';
import { compilePattern } from '../../../engine/pattern/compile.ts';
import { libraryPatterns } from '../../../engine/pattern/library.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import type { NamedLookPower } from '../../../engine/power/warnings.ts';
import { changed } from './difference.ts';
import { glimpse } from './glimpse.ts';
import { measure } from './measure.ts';
import type { ClipPosition, DrawSwatchRequest, LoftReply, LoftRequest } from './protocol.ts';
import { drawSwatch } from './sample-strip.ts';
import { Slices } from './slices.ts';
import { jobsOfCloth, weaveJobs } from './weave-jobs.ts';
import { weigh } from './weigh.ts';
import { weighClip } from './weigh-clip.ts';

type Post = (reply: LoftReply, transfer?: ArrayBuffer[]) => void;

/** What is worked on comes first; then the book that a hand has just opened, then what is read at leisure. */
const priorities = { swatch: 15, clip: 45, measure: 50, weigh: 55, sketch: 60 };

/** So soon after an edit the next one of the same hand may come. */
const handMilliseconds = 150;

export class Loft {
  private revision = 0;
  private piece: Piece | null = null;
  private score: Score | null = null;
  private readonly slices = new Slices();

  constructor(private readonly post: Post) {}

  tellLibrary(): void {
    this.post({ kind: 'library', patterns: libraryPatterns });
  }

  take(request: LoftRequest): void {
    if (request.kind === 'proofread') {
      const { diagnostics } = compilePattern(request.source, request.parameters);
      this.post({ kind: 'proofread', reading: request.reading, diagnostics });
      return;
    }
    if (request.kind === 'draw-swatch') {
      this.drawSwatch(request);
      return;
    }
    if (request.kind === 'unweave') {
      for (const name of jobsOfCloth(request.cloth)) this.slices.drop(name);
      return;
    }
    if (request.kind === 'glimpse') {
      this.post({ kind: 'glimpsed', name: request.name, glimpse: glimpse(request.text) });
      return;
    }
    if (request.kind === 'hold') {
      this.slices.clear();
      this.slices.ease(handMilliseconds);
      this.revision = request.revision;
      // The stage has taken this piece, so it prepares without errors here too.
      this.piece = changed(this.piece, request.difference);
      this.score = (this.piece && prepareScore(this.piece).value) ?? null;
      return;
    }
    if (request.revision !== this.revision || this.score === null) return;
    if (request.kind === 'weave') {
      // A cloth of the piece before may still be in view, of a look that this one does not have.
      if (request.look < this.score.looks.length) {
        for (const job of weaveJobs(this.score, request, this.post)) this.slices.add(job);
      }
      return;
    }
    if (request.kind === 'measure') this.measure(this.score, request.brightness);
    else if (request.kind === 'weigh-clip') this.weighClip(this.score, request.clip, request.brightness);
    else if (request.kind === 'weigh') this.weigh(this.score, request.patterns, request.brightness);
    else this.sketch(this.score, request.board);
  }

  private drawSwatch({ swatch, pattern, own }: DrawSwatchRequest): void {
    const finish = (levels: Uint8Array<ArrayBuffer> | null) =>
      this.post({ kind: 'swatch-drawn', swatch, levels }, levels === null ? [] : [levels.buffer]);
    const work = (function* () {
      finish(yield* drawSwatch(pattern, own));
    })();
    this.slices.add({ name: `swatch ${swatch}`, priority: priorities.swatch, work, lasting: true });
  }

  private weigh({ piece }: Score, patterns: readonly string[], brightness: number): void {
    const { revision, post } = this;
    const work = (function* () {
      for (const pattern of patterns) {
        const weight = yield* weigh(piece, pattern, brightness);
        post({ kind: 'weighed', revision, brightness, pattern, weight });
        yield;
      }
    })();
    this.slices.add({ name: 'weigh', priority: priorities.weigh, work });
  }

  private weighClip(score: Score, clip: ClipPosition, brightness: number): void {
    const { revision, post } = this;
    const work = (function* () {
      const weight = yield* weighClip(score, clip, brightness);
      post({ kind: 'clip-weighed', revision, brightness, clip, weight });
    })();
    this.slices.add({ name: 'weigh clip', priority: priorities.clip, work });
  }

  private measure(score: Score, brightness: number): void {
    const { revision } = this;
    const steps = measure(score, brightness);
    const finish = ({ looks, warnings }: ReturnType<typeof steps.next>['value'] & object) =>
      this.post({ kind: 'measured', revision, brightness, looks, warnings });
    const work = (function* () {
      finish(yield* steps);
    })();
    this.slices.add({ name: 'measure', priority: priorities.measure, work });
  }

  private sketch(score: Score, board: ChipName): void {
    const { revision } = this;
    const write = (power: readonly NamedLookPower[]) => {
      const { value, diagnostics } = generateSketch(score, board, { power });
      this.post({ kind: 'sketched', revision, board, sketch: value ?? null, diagnostics });
    };
    // The head of a sketch tells what the looks draw; measured here, it can be interrupted.
    const work = (function* () {
      write((yield* measure(score, score.piece.output.startBrightness)).looks);
    })();
    this.slices.add({ name: 'sketch', priority: priorities.sketch, work });
  }
}
