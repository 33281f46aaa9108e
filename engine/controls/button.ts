/** One button: from a bouncing contact to gestures. Everything is counted in steps of one millisecond. */
import type { Button, Controls } from '../piece/schema.ts';

export type Gesture = 'press' | 'hold' | 'double';

type Phase =
  /** Up, nothing pending. */
  | 'idle'
  /** Down, and the gesture still open. */
  | 'down'
  /** Down, and whatever this press meant has happened (or it is caught in a bag). */
  | 'spent'
  /** Up after a first press, waiting for a second one. */
  | 'waiting';

/**
 * Reads one button. What comes due in a millisecond acts before a change of that same millisecond:
 * a second press at the very end of the waiting time is a new first one.
 */
export class ButtonReader {
  private rawDown = false;
  private unchangedMs = 0;
  private debouncedDown = false;
  private phase: Phase = 'idle';
  /** Since the debounced level last changed. */
  private phaseMs = 0;
  private readonly times: Controls;
  private readonly hasHold: boolean;
  private readonly hasDouble: boolean;
  private readonly pressesAtOnce: boolean;

  constructor(button: Button, times: Controls) {
    this.times = times;
    this.hasHold = button.hold !== undefined;
    this.hasDouble = button.double !== undefined;
    this.pressesAtOnce = !this.hasHold && !this.hasDouble;
  }

  /** Takes the level of the contact in this millisecond; at most one gesture comes of it. */
  step(rawDown: boolean): Gesture | null {
    const changed = this.debounce(rawDown);
    // A button at rest, which is nearly always, costs no more than this.
    if (this.phase === 'idle' && !changed) return null;
    const due = this.elapse();
    const acted = changed ? this.change() : null;
    return due ?? acted;
  }

  /** True in the millisecond in which the debounced level changes. */
  private debounce(rawDown: boolean): boolean {
    if (rawDown !== this.rawDown) {
      this.rawDown = rawDown;
      this.unchangedMs = 0;
      return false;
    }
    if (rawDown === this.debouncedDown) return false;
    this.unchangedMs += 1;
    if (this.unchangedMs < this.times.debounceMilliseconds) return false;
    this.debouncedDown = rawDown;
    return true;
  }

  private elapse(): Gesture | null {
    if (this.phase === 'idle' || this.phase === 'spent') return null;
    this.phaseMs += 1;
    if (this.phase === 'waiting') {
      if (this.phaseMs < this.times.doubleMilliseconds) return null;
      this.phase = 'idle';
      return 'press';
    }
    if (this.phaseMs > this.times.caughtMilliseconds) {
      this.phase = 'spent';
    } else if (this.hasHold && this.phaseMs === this.times.holdMilliseconds) {
      this.phase = 'spent';
      return 'hold';
    }
    return null;
  }

  private change(): Gesture | null {
    this.phaseMs = 0;
    return this.debouncedDown ? this.goDown() : this.goUp();
  }

  private goDown(): Gesture | null {
    const second = this.phase === 'waiting';
    this.phase = second || this.pressesAtOnce ? 'spent' : 'down';
    if (second) return 'double';
    return this.pressesAtOnce ? 'press' : null;
  }

  private goUp(): Gesture | null {
    const open = this.phase === 'down';
    this.phase = open && this.hasDouble ? 'waiting' : 'idle';
    return open && !this.hasDouble ? 'press' : null;
  }
}
