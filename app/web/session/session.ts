/** One session at the bench: the open piece, the two workers, and everything the page shows of them. */
import type { Diagnostic } from '../../../engine/diagnostic.ts';
import type { Moment } from '../../../engine/look/moment.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import type { ClipPosition, MomentChange, ShownFrame, StageReply, StageRequest } from '../worker/protocol.ts';
import { type Bench, emptyBench, History, type OpenPiece } from './bench.ts';
import { Clock } from './clock.ts';
import { LoftLink } from './loft-link.ts';
import { Feed, Store } from './store.ts';
import { eventWords } from './words.ts';

/** The part of the moment that changes rarely enough for React. */
export type Playing = Pick<Moment, 'look' | 'brightness' | 'blackout' | 'paused'>;

type Answer = Exclude<StageReply, { kind: 'moment' }>;

export class Session {
  readonly bench = new Store<Bench>(emptyBench);
  readonly playing = new Store<Playing>({ look: 0, brightness: 0, blackout: false, paused: false });
  readonly moments = new Feed<Moment>();
  readonly frames = new Feed<ShownFrame>();
  readonly selected = new Store<ClipPosition | null>(null);
  /** The last thing that happened, in words, for those who cannot see it. */
  readonly announcement = new Store('');
  readonly loft: LoftLink;

  private readonly stage: Worker;
  private readonly clock: Clock;
  private readonly history = new History();
  private revision = 0;
  /** What to do with the answer to each `open` or `edit` that is under way. */
  private readonly pending = new Map<number, (answer: Answer) => void>();
  /** An edit waits while another is under way; a newer one takes its place. */
  private nextEdit: Piece | null = null;

  constructor(private readonly startsPaused: boolean) {
    this.stage = new Worker(new URL('../worker/stage-worker.ts', import.meta.url), {
      type: 'module',
      name: 'stage',
    });
    this.stage.onmessage = ({ data }: MessageEvent<StageReply>) => this.hear(data);
    this.loft = new LoftLink();
    this.clock = new Clock(
      (request) => this.ask(request),
      () => this.bench.get().revision,
    );
    this.clock.start();
  }

  /** Opens a file's text. The piece that is open stays if this one cannot be played. */
  open(fileName: string, text: string): Promise<boolean> {
    return new Promise((resolve) => {
      const revision = ++this.revision;
      this.pending.set(revision, (answer) => {
        if (answer.kind === 'refused') {
          this.bench.merge({ refusal: { fileName, diagnostics: answer.diagnostics } });
        } else {
          this.nextEdit = null;
          this.history.clear();
          this.clock.contacts.reset(answer.piece.controls.debounceMilliseconds);
          this.takeStage(answer, false);
          this.bench.merge({ opened: this.bench.get().opened + 1, refusal: null, editFaults: [] });
          this.selectIn(0);
          if (this.startsPaused) this.put({ paused: true });
          this.announcement.set(`${answer.piece.name} is on the bench.`);
        }
        resolve(answer.kind === 'taken');
      });
      this.ask({ kind: 'open', revision, text });
    });
  }

  /**
   * Changes the open piece.
   * @param mark name of the drag that the edit is part of: it is undone as one with the others of that name
   */
  edit(change: (piece: Piece) => Piece, mark: string | null = null): void {
    const { open } = this.bench.get();
    if (open === null) return;
    const piece = change(open.piece);
    if (piece === open.piece) return;
    this.history.record(open.piece, mark);
    this.bench.merge({ editFaults: [] });
    this.show(piece);
  }

  endDrag(): void {
    this.history.rest();
  }

  undo(): void {
    this.goTo((now) => this.history.undo(now));
  }

  redo(): void {
    this.goTo((now) => this.history.redo(now));
  }

  /** The file has been handed to the maker. */
  markSaved(): void {
    const { open } = this.bench.get();
    if (open !== null) this.bench.merge({ open: { ...open, unsaved: false } });
  }

  /** A file that is not even worth reading. */
  refuse(fileName: string, ...diagnostics: Diagnostic[]): void {
    this.bench.merge({ refusal: { fileName, diagnostics } });
  }

  dismissRefusal(): void {
    this.bench.merge({ refusal: null });
  }

  press(button: number): void {
    this.clock.contacts.press(button, performance.now());
  }

  release(button: number): void {
    this.clock.contacts.release(button, performance.now());
  }

  put(change: MomentChange): void {
    this.clock.put(change);
  }

  /** Moves the look's time by hand; time stands still until `endScrub`. */
  scrub(ms: number): void {
    this.clock.hold(true);
    this.clock.put({ ms });
  }

  endScrub(): void {
    this.clock.hold(false);
  }

  private goTo(step: (now: Piece) => Piece | null): void {
    const { open } = this.bench.get();
    const piece = open === null ? null : step(open.piece);
    if (piece !== null) this.show(piece);
  }

  /** Shows an edited piece at once and lets the stage take it. */
  private show(piece: Piece): void {
    const { open } = this.bench.get();
    if (open === null) return;
    this.bench.merge({ open: { ...open, piece, unsaved: true }, ...this.historyState() });
    this.nextEdit = piece;
    this.sendEdit();
  }

  private sendEdit(): void {
    if (this.nextEdit === null || this.pending.size > 0) return;
    const piece = this.nextEdit;
    this.nextEdit = null;
    const revision = ++this.revision;
    this.pending.set(revision, (answer) => {
      if (answer.kind === 'taken') this.takeStage(answer, true);
      else this.takeBack(answer.diagnostics);
      this.sendEdit();
    });
    this.ask({ kind: 'edit', revision, piece });
  }

  private takeStage(
    { revision, piece, view, warnings }: Extract<Answer, { kind: 'taken' }>,
    edited: boolean,
  ): void {
    const shown = this.bench.get().open;
    const open: OpenPiece = {
      // Another edit may be on its way already; the maker goes on seeing that one.
      piece: edited && this.nextEdit !== null && shown !== null ? shown.piece : piece,
      view,
      warnings,
      unsaved: edited,
    };
    this.bench.merge({ open, revision, ...this.historyState() });
    this.loft.hold(revision, piece, edited);
  }

  /** The stage goes on with the last piece that could be played, and so does the page. */
  private takeBack(editFaults: Bench['editFaults']): void {
    if (this.nextEdit !== null) return;
    this.bench.merge({ editFaults });
    const piece = this.history.withdraw();
    if (piece !== null) this.show(piece);
  }

  private historyState(): Pick<Bench, 'canUndo' | 'canRedo'> {
    return { canUndo: this.history.canUndo, canRedo: this.history.canRedo };
  }

  private ask(request: StageRequest): void {
    this.stage.postMessage(request);
  }

  private hear(reply: StageReply): void {
    if (reply.kind !== 'moment') {
      const settle = this.pending.get(reply.revision);
      this.pending.delete(reply.revision);
      settle?.(reply);
      return;
    }
    this.clock.answered();
    if (reply.revision !== this.bench.get().revision) return;
    this.showMoment(reply);
  }

  private showMoment({ moment, events, frame }: Extract<StageReply, { kind: 'moment' }>): void {
    const { look, brightness, blackout, paused } = moment;
    const before = this.playing.get();
    const unchanged =
      before.look === look &&
      before.brightness === brightness &&
      before.blackout === blackout &&
      before.paused === paused;
    if (!unchanged) {
      this.playing.set({ look, brightness, blackout, paused });
      if (before.look !== look) this.selectIn(look);
      if (before.brightness !== brightness) this.loft.setBrightness(brightness);
    }
    this.moments.send(moment);
    if (frame !== null) this.frames.send(frame);
    if (events.length > 0) this.announcement.set(events.map(eventWords).join(' '));
  }

  /** The first clip of a look, so that there is always something to turn. */
  private selectIn(look: number): void {
    const { open } = this.bench.get();
    const first = open?.view.clips.find((clip) => clip.look === look);
    this.selected.set(first === undefined ? null : { look, track: first.track, clip: first.clip });
  }
}
