/** How large time is drawn on the loom: 1 is the whole look at once. */
import { clamp } from '../../../engine/edit/snap/free-room.ts';

export const mostZoom = 64;

/** Ctrl and a wheel's notch of 100 CSS pixels draw time a quarter larger or smaller. */
const perPixel = 1.25 ** (1 / 100);

export function zoomOfWheel(zoom: number, deltaY: number): number {
  const next = clamp(zoom * perPixel ** -deltaY, 1, mostZoom);
  // Back to the whole look without a crumb left over.
  return next < 1.01 ? 1 : next;
}

/**
 * How far the loom scrolls so that a moment stays under the hand while time is drawn otherwise.
 * @param scrolled before, in CSS pixels
 * @param handY of the hand below the beginning of the look
 */
export function scrollAbout(scrolled: number, handY: number, zoom: number, next: number): number {
  return Math.max(0, scrolled + handY * (next / zoom - 1));
}
