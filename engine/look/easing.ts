/** Easing functions by the names of CSS Easing Functions Level 1, as tables of 65 entries. */
export const easingNames = [
  'linear',
  'ease',
  'ease-in',
  'ease-out',
  'ease-in-out',
  'step-start',
  'step-end',
] as const;
export type EasingName = (typeof easingNames)[number];
/** A name, or the four numbers of `cubic-bezier(x1, y1, x2, y2)`. */
export type Easing = EasingName | readonly [number, number, number, number];
