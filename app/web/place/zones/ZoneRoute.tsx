/** The zone in hand on the table: where its first pixel is, where its last, and the way between. */
import { useMemo } from 'react';
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Piece } from '../../../../engine/piece/schema.ts';
import { useStore } from '../../session/store.ts';
import { useHand } from '../hand.ts';
import { useCamera } from '../surface/context.ts';
import { layoutOf } from './layout-of.ts';
import { type Lane, routeOf } from './route.ts';

export function ZoneRoute({ piece }: { piece: Piece }) {
  const name = useStore(useHand().zone);
  const { side, toView } = useCamera();
  const layout = layoutOf(piece);
  const zone = name === null ? undefined : layout.zones.get(name);
  const route = useMemo(() => zone && routeOf(zone, layout, side), [zone, layout, side]);
  if (route === undefined) return null;
  return (
    <g className="zone-route">
      {route.lanes.map((lane, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lanes have no name but their place.
        <LaneOnTable key={i} lane={lane} />
      ))}
      {route.last.map((place) => (
        <Mark key={`${place.x} ${place.y}`} at={toView(place)} kind="last" />
      ))}
      {route.first.map((place) => (
        <Mark key={`${place.x} ${place.y}`} at={toView(place)} kind="first" />
      ))}
    </g>
  );
}

/** How long a bead of light takes from the first pixel to the last. */
const seconds = 2.4;

function LaneOnTable({ lane }: { lane: Lane }) {
  const { toView } = useCamera();
  const spots = lane.places.map(toView);
  const way = `M${spots.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
  const isStill = window.matchMedia('(prefers-reduced-motion: reduce)').matches;
  return (
    <>
      <path className="steps" d={stepsPath(spots, lane.jumps, false)} />
      <path className="jumps" d={stepsPath(spots, lane.jumps, true)} />
      {arrowsOn(spots).map(({ at, degrees }) => (
        <path
          key={`${at.x} ${at.y}`}
          className="arrow"
          d="M-4 -4.500L3 0L-4 4.500"
          transform={`translate(${at.x.toFixed(1)} ${at.y.toFixed(1)}) rotate(${degrees.toFixed(1)})`}
        />
      ))}
      {!isStill && spots.length > 1 && (
        <circle className="runner" r="5">
          <animateMotion dur={`${seconds}s`} repeatCount="indefinite" path={way} />
        </circle>
      )}
    </>
  );
}

function Mark({ at, kind }: { at: Point; kind: 'first' | 'last' }) {
  return (
    <g className={kind} transform={`translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})`}>
      {kind === 'first' ? <circle r="9" /> : <path d="M-6 -6L6 6M6 -6L-6 6" />}
      <text y="-15">{kind}</text>
    </g>
  );
}

function stepsPath(spots: readonly Point[], jumps: readonly boolean[], wanted: boolean): string {
  return jumps
    .map((isJump, i) =>
      isJump === wanted
        ? `M${spots[i]!.x.toFixed(1)} ${spots[i]!.y.toFixed(1)}L${spots[i + 1]!.x.toFixed(1)} ${spots[i + 1]!.y.toFixed(1)}`
        : '',
    )
    .join('');
}

/** Pixels of the screen from arrow to arrow. */
const arrowGap = 90;

function arrowsOn(spots: readonly Point[]): { at: Point; degrees: number }[] {
  const arrows: { at: Point; degrees: number }[] = [];
  let passed = arrowGap / 2;
  for (const [i, to] of spots.entries()) {
    const from = spots[i - 1];
    if (from === undefined) continue;
    passed += Math.hypot(to.x - from.x, to.y - from.y);
    if (passed < arrowGap) continue;
    passed = 0;
    const at = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    arrows.push({ at, degrees: (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI });
  }
  return arrows;
}
