/** The piece's buttons as the page's hands press them: edges in time, waiting to be played. */
import type { ContactEdge } from '../worker/protocol.ts';

/**
 * A click by a screen reader or a light tap can be shorter than any finger on a real button; it is drawn
 * out so that it counts. The player's rule: a press of 40 ms or more always counts.
 */
const shortestPressMilliseconds = 60;

interface TimedEdge {
  /** On the page's clock. */
  readonly at: number;
  readonly button: number;
  readonly down: boolean;
}

export class Contacts {
  private waiting: TimedEdge[] = [];
  private readonly downSince = new Map<number, number>();

  press(button: number, now: number): void {
    if (this.downSince.has(button)) return;
    // A release that is still waiting comes first.
    const last = this.waiting.filter((edge) => edge.button === button).at(-1)?.at ?? now;
    const at = Math.max(now, last + 1);
    this.downSince.set(button, at);
    this.waiting.push({ at, button, down: true });
  }

  release(button: number, now: number): void {
    const since = this.downSince.get(button);
    if (since === undefined) return;
    this.downSince.delete(button);
    this.waiting.push({ at: Math.max(now, since + shortestPressMilliseconds), button, down: false });
  }

  /** Takes the edges that fall into the next `elapsedMs` after `from`; later ones go on waiting. */
  take(from: number, elapsedMs: number): ContactEdge[] {
    const isDue = (edge: TimedEdge) => edge.at <= from + elapsedMs;
    const due = this.waiting.filter(isDue).sort((a, b) => a.at - b.at);
    this.waiting = this.waiting.filter((edge) => !isDue(edge));
    return due.map(({ at, button, down }) => ({ atMs: Math.max(1, Math.ceil(at - from)), button, down }));
  }

  /** Another piece has other buttons. */
  clear(): void {
    this.waiting = [];
    this.downSince.clear();
  }
}
