/** Carrying a swatch by pointer or finger: who it hovers over, and who it is dropped on. */

/** What a place that takes swatches hears when one is let go of over it, or hovers there. */
export interface SwatchAbove {
  readonly pattern: string;
  readonly clientX: number;
  readonly clientY: number;
}

const takers = '[data-takes-swatch]';

/** The innermost place under the pointer that takes swatches. */
export function takerAt(clientX: number, clientY: number): Element | null {
  return document.elementFromPoint(clientX, clientY)?.closest(takers) ?? null;
}

export function tellTaker(
  taker: Element,
  event: 'swatch-above' | 'swatch-gone' | 'swatch-dropped',
  detail: SwatchAbove,
): void {
  taker.dispatchEvent(new CustomEvent(event, { bubbles: true, detail }));
}

/** A hand that moves less than this, in CSS pixels, meant to tap. */
const carryingBeyond = 7;

export const isCarrying = (fromX: number, fromY: number, x: number, y: number) =>
  Math.hypot(x - fromX, y - fromY) > carryingBeyond;
