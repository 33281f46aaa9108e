import { type Easing, ease, easingTable } from '../../../../engine/look/easing.ts';

/** Away from the edge, so that a stroke is not cut. */
const margin = 6;

/** A small picture of an easing as the engine follows it: time runs down, progress to the right. */
export function easingIcon(easing: Easing, size: number): string {
  const table = easingTable(easing);
  const room = size - 2 * margin;
  const points = [`${margin} ${margin}`];
  for (let part = 0; part <= 32; part++) {
    const eased = ease(table, Math.min(65535, part * 2048)) / 65536;
    points.push(`${(margin + eased * room).toFixed(1)} ${(margin + (part / 32) * room).toFixed(1)}`);
  }
  points.push(`${margin + room} ${margin + room}`);
  return `M${points.join('L')}`;
}
