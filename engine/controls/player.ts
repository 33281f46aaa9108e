/**
 * The wearer's side of a piece: which look, how bright, dark or paused, from buttons and time alone.
 * The sketch runs the same steps, one a millisecond; rules T and C of engine/SPEC.md.
 */
import type { Moment } from '../look/moment.ts';
import type { Action, Button, Piece } from '../piece/schema.ts';
import { ButtonReader } from './button.ts';

/** In the order in which the events of one millisecond are told. */
const eventKinds = ['look', 'brightness', 'blackout', 'pause'] as const;
export type PlayerEventKind = (typeof eventKinds)[number];

export interface PlayerEvent {
  /** The player's uptime, uint32. */
  readonly ms: number;
  readonly kind: PlayerEventKind;
  /** Name of the look entered, brightness 0..255, or whether blackout or pause is on. */
  readonly value: string | number | boolean;
}

/** A look and the milliseconds since it was entered, uint32. Time in a look's loop is derived from it. */
interface LookClock {
  look: number;
  ms: number;
}

interface PlayedLook {
  readonly dissolveMilliseconds: number;
  readonly moveOn: null | { readonly afterMilliseconds: number; readonly look: number };
}

const nothing: readonly PlayerEvent[] = [];

/**
 * A state machine that is stepped once a millisecond. It needs nothing of a score but the piece.
 * `startUptimeMs` lets a test begin shortly before the counter wraps after 49.7 days.
 */
export class Player {
  private readonly piece: Piece;
  private readonly looks: readonly PlayedLook[];
  private readonly buttons: readonly { readonly reader: ButtonReader; readonly actions: Button }[];
  private uptimeMs: number;
  private readonly current: LookClock = { look: 0, ms: 0 };
  private leaving: LookClock | null = null;
  private brightness: number;
  private blackout = false;
  private paused = false;
  private events: PlayerEvent[] = [];

  constructor(score: { readonly piece: Piece }, startUptimeMs = 0) {
    this.piece = score.piece;
    this.looks = playedLooks(this.piece);
    const { controls } = this.piece;
    this.buttons = controls.buttons.map((button) => ({
      reader: new ButtonReader(button, controls),
      actions: button,
    }));
    this.uptimeMs = startUptimeMs >>> 0;
    this.brightness = this.piece.output.startBrightness;
  }

  /**
   * One millisecond passes.
   * @param rawDown level of each button's contact, in the order of the file, bounce and all
   * @returns what has changed, in telling order; empty nearly always
   */
  step(rawDown: readonly boolean[]): readonly PlayerEvent[] {
    this.uptimeMs = (this.uptimeMs + 1) >>> 0;
    if (!this.paused) this.advanceLooks();
    for (let index = 0; index < this.buttons.length; index++) {
      const { reader, actions } = this.buttons[index]!;
      const gesture = reader.step(rawDown[index] === true);
      const action = gesture === null ? undefined : actions[gesture];
      if (action !== undefined) this.act(action);
    }
    return this.events.length === 0 ? nothing : this.takeEvents();
  }

  moment(): Moment {
    const { leaving, current } = this;
    return {
      look: current.look,
      ms: current.ms,
      brightness: this.brightness,
      blackout: this.blackout,
      paused: this.paused,
      uptimeMs: this.uptimeMs,
      leaving: leaving === null ? null : { look: leaving.look, ms: leaving.ms, mix: this.mix() },
    };
  }

  /**
   * Moves to a moment as if the piece had come there by itself: for scrubbing, and for playing on after
   * an edit. Gestures that are under way go on; the uptime stays what it is, and nothing is told.
   */
  put({ look, ms, brightness, blackout, paused, leaving }: Moment): void {
    this.current.look = look;
    this.current.ms = ms;
    this.leaving = leaving === null ? null : { look: leaving.look, ms: leaving.ms };
    this.brightness = brightness;
    this.blackout = blackout;
    this.paused = paused;
  }

  private advanceLooks(): void {
    const { current, leaving } = this;
    const { dissolveMilliseconds, moveOn } = this.looks[current.look]!;
    current.ms = (current.ms + 1) >>> 0;
    if (leaving !== null) {
      leaving.ms = (leaving.ms + 1) >>> 0;
      if (current.ms >= dissolveMilliseconds) this.leaving = null;
    }
    if (moveOn !== null && current.ms === moveOn.afterMilliseconds) this.enter(moveOn.look);
  }

  /** How far the current look has come, 0..254: at 255 the leaving one is gone. */
  private mix(): number {
    return Math.floor((this.current.ms * 255) / this.looks[this.current.look]!.dissolveMilliseconds);
  }

  private enter(look: number): void {
    const { current } = this;
    this.leaving = this.looks[look]!.dissolveMilliseconds > 0 ? { ...current } : null;
    current.look = look;
    current.ms = 0;
    this.tell('look', this.piece.looks[look]!.name);
  }

  private act(action: Action): void {
    if (this.blackout) {
      this.blackout = false;
      this.tell('blackout', false);
      return;
    }
    switch (action.do) {
      case 'next-look':
        this.enter((this.current.look + 1) % this.looks.length);
        break;
      case 'previous-look':
        this.enter((this.current.look + this.looks.length - 1) % this.looks.length);
        break;
      case 'go-to-look':
        this.enter(indexOfLook(this.piece, action.look));
        break;
      case 'brightness-step':
        this.stepBrightness();
        break;
      case 'blackout':
        this.blackout = true;
        this.tell('blackout', true);
        break;
      case 'pause':
        this.paused = !this.paused;
        this.tell('pause', this.paused);
        break;
    }
  }

  /** The smallest step above the present brightness, or the first one again. */
  private stepBrightness(): void {
    const { brightnessSteps } = this.piece.controls;
    const above = brightnessSteps.filter((step) => step > this.brightness);
    const next = above.length > 0 ? Math.min(...above) : brightnessSteps[0]!;
    if (next === this.brightness) return;
    this.brightness = next;
    this.tell('brightness', next);
  }

  private tell(kind: PlayerEventKind, value: string | number | boolean): void {
    this.events.push({ ms: this.uptimeMs, kind, value });
  }

  private takeEvents(): readonly PlayerEvent[] {
    const events = this.events;
    this.events = [];
    return events.sort((a, b) => eventKinds.indexOf(a.kind) - eventKinds.indexOf(b.kind));
  }
}

function playedLooks(piece: Piece): PlayedLook[] {
  return piece.looks.map(({ dissolveMilliseconds, moveOn }, index) => ({
    dissolveMilliseconds,
    moveOn: moveOn
      ? {
          afterMilliseconds: moveOn.afterMilliseconds,
          look: moveOn.to === undefined ? (index + 1) % piece.looks.length : indexOfLook(piece, moveOn.to),
        }
      : null,
  }));
}

/** Names are unique and known to exist in a checked piece. */
function indexOfLook(piece: Piece, name: string): number {
  return piece.looks.findIndex((look) => look.name === name);
}
