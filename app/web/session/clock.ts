/**
 * The page's clock: tells the stage how much time has passed and which buttons moved in it. One request
 * is under way at a time, so a slow machine plays fewer frames, never late ones.
 */
import type { MomentChange, StageRequest } from '../worker/protocol.ts';
import { Contacts } from './contacts.ts';

/** A page that was hidden or stuck goes on where it was; it does not rush after the time it missed. */
const longestStepMilliseconds = 250;

export class Clock {
  readonly contacts = new Contacts();
  private playedUntil = 0;
  private asked = false;
  private change: MomentChange | null = null;
  private held = false;

  /** @param revision of the piece on stage, 0 while there is none */
  constructor(
    private readonly send: (request: StageRequest) => void,
    private readonly revision: () => number,
  ) {}

  start(): void {
    this.playedUntil = performance.now();
    const tick = (now: number) => {
      this.tick(now);
      requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
  }

  /** To be carried out before any more time passes; later changes join it. */
  put(change: MomentChange): void {
    this.change = { ...this.change, ...change };
  }

  /** While a hand scrubs, time stands still. */
  hold(held: boolean): void {
    this.held = held;
  }

  /** The stage has answered. */
  answered(): void {
    this.asked = false;
  }

  private tick(now: number): void {
    const revision = this.revision();
    if (this.asked || revision === 0) return;
    if (this.change !== null) {
      this.send({ kind: 'put', revision, change: this.change });
      this.change = null;
      this.asked = true;
      return;
    }
    const goesOnFrom = Math.max(this.playedUntil, now - longestStepMilliseconds);
    this.contacts.skip(this.playedUntil, goesOnFrom);
    this.playedUntil = goesOnFrom;
    if (this.held) this.playedUntil = now;
    const elapsedMs = Math.floor(now - this.playedUntil);
    if (elapsedMs <= 0) return;
    const edges = this.contacts.take(this.playedUntil, elapsedMs);
    this.send({ kind: 'play', revision, elapsedMs, edges });
    this.playedUntil += elapsedMs;
    this.asked = true;
  }
}
