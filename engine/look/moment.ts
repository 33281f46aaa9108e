/** Everything that a frame depends on. Nothing else influences it, so seeking equals playing. */
export interface Moment {
  /** Index of the look. */
  readonly look: number;
  /** Milliseconds since the look was entered, uint32, not wrapped at the look's length. */
  readonly ms: number;
  /** Set brightness, 0..255. */
  readonly brightness: number;
  readonly blackout: boolean;
  readonly paused: boolean;
  /** Milliseconds since power-up, uint32. No part of the picture so far; rehearsal checks the clock by it. */
  readonly uptimeMs: number;
  /** The look that is dissolving away, and how far the new one has come: mix 0..255. */
  readonly leaving: null | { readonly look: number; readonly ms: number; readonly mix: number };
}
