/** One session at the bench: the open piece, the two workers, and everything the page shows of them. */
import type { Checked, Diagnostic } from '../../../engine/diagnostic.ts';
import type { Edit } from '../../../engine/edit/edit.ts';
import { bail, nextSteps, redo, settle, undo, type Work } from '../../../engine/edit/history.ts';
import type { Moment } from '../../../engine/look/moment.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import { differenceOf } from '../worker/difference.ts';
import type { ClipPosition, MomentChange, ShownFrame, StageReply, StageRequest } from '../worker/protocol.ts';
import { type Bench, emptyBench, type OpenPiece } from './bench.ts';
import { Clock } from './clock.ts';
import { Desk } from './desk.ts';
import { editWork, type Manner, pullWork } from './hand.ts';
import { keptOpen, keptView, keptWarnings } from './kept.ts';
import { Leaving } from './leaving.ts';
import { LoftLink } from './loft-link.ts';
import { startThread } from './start-thread.ts';
import { Feed, Store } from './store.ts';
import { eventWords } from './words.ts';
import { type Arrival, arrived, isUnsaved, type Works } from './works.ts';

/** The part of the moment that changes rarely enough for React. */
export type Playing = Pick<Moment, 'look' | 'brightness' | 'blackout' | 'paused'>;

type Answer = Extract<StageReply, { kind: 'opened' | 'taken' | 'refused' }>;
type OnStage = Extract<Answer, { kind: 'opened' | 'taken' }>;

export class Session {
  readonly bench = new Store<Bench>(emptyBench);
  readonly desk = new Desk();
  readonly playing = new Store<Playing>({ look: 0, brightness: 0, blackout: false, paused: false });
  readonly moments = new Feed<Moment>();
  readonly frames = new Feed<ShownFrame>();
  /** Pixels that the picture shows lit; null for all. */
  readonly inLight = new Store<Uint16Array | null>(null);
  readonly selected = new Store<ClipPosition | null>(null);
  /** The last thing that happened, in words, for those who cannot see it. */
  readonly announcement = new Store('');
  /** Of a piece that was taken up again: since when it has been lying here, in words. */
  readonly keptFrom = new Store<string | null>(null);
  readonly leaving = new Leaving();
  readonly loft: LoftLink;

  private readonly stage: Worker;
  private readonly clock: Clock;
  private works: Works | null = null;
  private revision = 0;
  /** What to do with the answer to each `open` or `edit` that is under way. */
  private readonly pending = new Map<number, (answer: Answer) => void>();
  /** An edit waits while another is under way; a newer one takes its place. */
  private editWaits = false;

  constructor(private readonly startsPaused: boolean) {
    this.stage = startThread('stage');
    this.stage.onmessage = ({ data }: MessageEvent<StageReply>) => this.hear(data);
    this.loft = new LoftLink(() => this.bench.get().open?.piece);
    this.clock = new Clock(
      (request) => this.ask(request),
      () => this.bench.get().revision,
    );
    this.clock.start();
    this.desk.spotlight.subscribe(() => this.shine());
  }

  /** Opens a file's text. The piece that is open stays if this one cannot be played. */
  open(fileName: string, text: string, arrival: Arrival = { origin: 'file' }): Promise<boolean> {
    return new Promise((resolve) => {
      const revision = ++this.revision;
      this.pending.set(revision, (answer) => {
        if (answer.kind === 'opened') {
          this.editWaits = false;
          this.clock.contacts.reset(answer.piece.controls.debounceMilliseconds);
          const { origin } = arrival;
          this.desk.spotlight.set(null);
          this.takeStage(answer, arrived(answer.piece, arrival), false);
          this.bench.merge({ opened: this.bench.get().opened + 1, origin, refusal: null, editFaults: [] });
          this.selectIn(0);
          if (this.startsPaused) this.put({ paused: true });
          this.announcement.set(`${answer.piece.name} is on the bench.`);
        } else if (answer.kind === 'refused') {
          this.bench.merge({ refusal: { fileName, diagnostics: answer.diagnostics } });
          this.sendEdit();
        }
        resolve(answer.kind === 'opened');
      });
      this.ask({ kind: 'open', revision, text });
    });
  }

  /**
   * The one door into the open piece. A refused edit tells why, and leaves everything as it was.
   * @param manner `drag` or `pull` for one of many edits until `endDrag`: they are undone as one
   */
  edit(edit: Edit, manner: Manner = 'step'): void {
    this.change((work) => editWork(work, edit, manner));
  }

  /**
   * One moment of a drag, until `endDrag`. What an offer refuses is told like an edit that is refused.
   * @param name of the step; all pulls of one name are one step
   * @param edit of the piece as it was when the hand began
   */
  pull(name: string, edit: (before: Piece) => Checked<Edit>): void {
    this.change((work) => pullWork(work, name, edit));
  }

  endDrag(): void {
    if (this.works === null) return;
    this.works = { ...this.works, shown: settle(this.works.shown) };
    this.tellWorks();
  }

  /** The hand gives up: everything is as it was when the drag began. */
  bailDrag(): void {
    this.change(bail);
  }

  undo(): void {
    this.change(undo);
  }

  redo(): void {
    this.change(redo);
  }

  /** The open piece with its history, to be kept for another day; null while nothing is open. */
  get work(): Work | null {
    return this.works === null ? null : settle(this.works.shown);
  }

  /** The file has been handed to the maker. */
  markSaved(): void {
    if (this.works === null) return;
    this.works = { ...this.works, saved: this.works.shown.piece };
    this.tellWorks();
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

  /** Shows the changed piece at once and lets the stage take it. */
  private change(change: (work: Work) => Checked<Work>): void {
    if (this.works === null) return;
    const { value: shown, diagnostics } = change(this.works.shown);
    this.bench.merge({ editFaults: diagnostics });
    if (shown === undefined) return;
    const moved = shown.piece !== this.works.shown.piece;
    this.works = { ...this.works, shown };
    this.tellWorks();
    if (!moved) return;
    this.editWaits = true;
    this.sendEdit();
  }

  private sendEdit(): void {
    if (!this.editWaits || this.works === null || this.pending.size > 0) return;
    this.editWaits = false;
    const played = this.works.shown;
    const revision = ++this.revision;
    this.pending.set(revision, (answer) => {
      if (answer.kind === 'refused') this.takeBack(answer.diagnostics);
      else if (answer.kind === 'taken' && this.works !== null) {
        this.takeStage(answer, { ...this.works, played }, true);
      }
      this.sendEdit();
    });
    const difference = differenceOf(this.works.played.piece, played.piece);
    this.ask({ kind: 'edit', revision, difference });
  }

  private takeStage({ revision, view, warnings }: OnStage, works: Works, edited: boolean): void {
    this.works = works;
    const before = this.bench.get().open;
    const open: OpenPiece = {
      piece: works.shown.piece,
      view: keptView(before?.view ?? null, view),
      warnings: keptWarnings(before?.warnings ?? [], warnings),
      unsaved: isUnsaved(works),
    };
    this.bench.merge({ open: keptOpen(before, open), revision, next: nextSteps(works.shown.history) });
    // Not the stage's copy: what an edit left alone is told by being the same object as before.
    this.loft.hold(revision, works.played.piece, edited);
    // A zone may have other pixels now.
    if (this.desk.spotlight.get() !== null) this.shine();
  }

  /** The stage goes on with the last piece that could be played, and so does the page. */
  private takeBack(editFaults: Bench['editFaults']): void {
    if (this.editWaits || this.works === null) return;
    this.works = { ...this.works, shown: settle(this.works.played) };
    this.bench.merge({ editFaults });
    this.tellWorks();
  }

  /** Hands on to the page what has become of the piece and its history. */
  private tellWorks(): void {
    const { open } = this.bench.get();
    if (open === null || this.works === null) return;
    const { shown } = this.works;
    const unsaved = isUnsaved(this.works);
    this.bench.merge({ open: { ...open, piece: shown.piece, unsaved }, next: nextSteps(shown.history) });
  }

  /** The stage shows what the desk's spotlight falls on. */
  private shine(): void {
    const { revision } = this.bench.get();
    if (revision > 0) this.ask({ kind: 'spotlight', revision, spotlight: this.desk.spotlight.get() });
  }

  private ask(request: StageRequest): void {
    this.stage.postMessage(request);
  }

  private hear(reply: StageReply): void {
    if (reply.kind === 'spotlit') {
      this.inLight.set(reply.pixels);
      return;
    }
    if (reply.kind !== 'moment') {
      const settle = this.pending.get(reply.revision);
      this.pending.delete(reply.revision);
      settle?.(reply);
      return;
    }
    if (reply.asked) this.clock.answered();
    if (reply.revision === this.bench.get().revision) this.showMoment(reply);
    // A piece that stands still is drawn once only: what was not taken must be asked for again.
    else if (reply.frame !== null) this.put({});
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
      if (before.look !== look) this.enter(look);
      if (before.brightness !== brightness) this.loft.setBrightness(brightness);
    }
    this.moments.send(moment);
    if (frame !== null) this.frames.send(frame);
    if (events.length > 0) this.announcement.set(events.map(eventWords).join(' '));
  }

  /** Another look has other tracks: none of them is shown by itself. */
  private enter(look: number): void {
    const spotlight = this.desk.spotlight.get();
    if (spotlight !== null && 'track' in spotlight) this.desk.spotlight.set(null);
    this.selectIn(look);
  }

  /** The first clip of a look, so that there is always something to turn. */
  private selectIn(look: number): void {
    const { open } = this.bench.get();
    const first = open?.view.clips.find((clip) => clip.look === look);
    this.selected.set(first === undefined ? null : { look, track: first.track, clip: first.clip });
  }
}
