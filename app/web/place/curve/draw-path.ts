/** Lines as path data of SVG. */
import type { Place } from '../../../../engine/layout/cubic.ts';
import type { Line } from './nodes.ts';

/** @param spot where a place stands in the drawing */
export function pathData({ start, curves }: Line, spot: (place: Place) => Place): string {
  const text = (place: Place) =>
    spot(place)
      .map((value) => value.toFixed(2))
      .join(' ');
  const parts = curves.map(
    ({ firstControl, secondControl, end }) => `C${text(firstControl)} ${text(secondControl)} ${text(end)}`,
  );
  return `M${text(start)}${parts.join('')}`;
}
