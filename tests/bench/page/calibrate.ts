/** How fast this computer is right now, in the page's own thread: a fixed loop, timed. */
import type { Page } from 'playwright-core';

/** Milliseconds that the loop takes: the median of some runs. */
export function calibrate(page: Page): Promise<number> {
  return page.evaluate(() => {
    // A generator of chance by shifts (Marsaglia, "Xorshift RNGs", 2003): whole numbers only, no memory.
    const loop = () => {
      let state = 2463534242;
      for (let i = 0; i < 4_000_000; i++) {
        state ^= state << 13;
        state ^= state >>> 17;
        state ^= state << 5;
      }
      return state;
    };
    const times = Array.from({ length: 15 }, () => {
      const began = performance.now();
      if (loop() === 0) throw new Error('An xorshift never reaches 0.');
      return performance.now() - began;
    });
    return times.sort((a, b) => a - b)[7]!;
  });
}
