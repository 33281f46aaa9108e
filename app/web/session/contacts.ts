/** The piece's buttons as the page's hands press them: edges in time, waiting to be played. */
import type { ContactEdge } from '../worker/protocol.ts';

/** A contact must last longer than the debounce time to count, and so must the gap before the next one. */
const beyondDebounceMilliseconds = 40;

interface TimedEdge {
  /** On the page's clock. */
  readonly at: number;
  readonly button: number;
  readonly down: boolean;
}

/**
 * A click by a screen reader or a light tap can be shorter than any finger on a real button; presses and
 * the gaps between them are drawn out so that they count.
 */
export class Contacts {
  private shortestMilliseconds = 20 + beyondDebounceMilliseconds;
  private waiting: TimedEdge[] = [];
  private readonly downSince = new Map<number, number>();

  press(button: number, now: number): void {
    if (this.downSince.has(button)) return;
    const released = this.waiting.filter((edge) => edge.button === button).at(-1)?.at;
    const at = released === undefined ? now : Math.max(now, released + this.shortestMilliseconds);
    this.downSince.set(button, at);
    this.waiting.push({ at, button, down: true });
  }

  release(button: number, now: number): void {
    const since = this.downSince.get(button);
    if (since === undefined) return;
    this.downSince.delete(button);
    this.waiting.push({ at: Math.max(now, since + this.shortestMilliseconds), button, down: false });
  }

  /**
   * What lies between these two times will not be played: a page that was stuck goes on from the later one.
   * What was pressed meanwhile is moved on as a whole, so that a press stays as long as it was; one whose
   * beginning has been played already goes on from there.
   */
  skip(playedUntil: number, goesOnFrom: number): void {
    const [first] = [...this.waiting].sort((a, b) => a.at - b.at);
    if (first === undefined) return;
    const late = goesOnFrom - (first.down ? first.at : playedUntil);
    if (late > 0) this.waiting = this.waiting.map((edge) => ({ ...edge, at: edge.at + late }));
  }

  /** Takes the edges that fall into the next `elapsedMs` after `from`; later ones go on waiting. */
  take(from: number, elapsedMs: number): ContactEdge[] {
    const isDue = (edge: TimedEdge) => edge.at <= from + elapsedMs;
    const due = this.waiting.filter(isDue).sort((a, b) => a.at - b.at);
    this.waiting = this.waiting.filter((edge) => !isDue(edge));
    return due.map(({ at, button, down }) => ({ atMs: Math.max(1, Math.ceil(at - from)), button, down }));
  }

  /** Another piece has other buttons. */
  reset(debounceMilliseconds: number): void {
    this.shortestMilliseconds = debounceMilliseconds + beyondDebounceMilliseconds;
    this.waiting = [];
    this.downSince.clear();
  }
}
