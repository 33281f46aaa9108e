/** A zone at a glance: its pixels among all others, the first one ringed. No colours of light: it is a plan. */
import { memo } from 'react';
import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import type { Layout } from '../../../../engine/layout/layout.ts';
import { boxAround, widened } from '../surface/box.ts';
import { dotsPath } from '../surface/outline.ts';

interface Props {
  readonly layout: Layout;
  readonly zone: string;
  readonly side: Side;
}

/** Room around the outermost pixels, as a share of the longer side: dots have a size. */
const marginShare = 0.08;

export const ZoneDrawing = memo(function ZoneDrawing({ layout, zone, side }: Props) {
  const places = layout.pixels.map((pixel) => pixel[side]);
  const box = boxAround(places);
  const entries = layout.zones.get(zone)?.entries ?? [];
  if (box === undefined) return null;
  const longer = Math.max(box.right - box.left, box.top - box.bottom, 1);
  const { left, right, bottom, top } = widened(box, longer * marginShare);
  const lit = entries.map(({ pixel }) => places[pixel]!);
  const first = entries.filter(({ index }) => index === 0).map(({ pixel }) => places[pixel]!);
  return (
    <svg
      className="zone-drawing"
      viewBox={`${left} ${-top} ${right - left} ${top - bottom}`}
      aria-hidden="true"
    >
      <g transform="scale(1 -1)">
        <path className="others" d={dotsPath(places)} />
        <path className="lit" d={dotsPath(lit)} />
        <path className="first" d={dotsPath(first)} />
      </g>
    </svg>
  );
});
