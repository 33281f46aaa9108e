/** The way light runs through a zone: from index to index, as lines between the places of pixels. */
import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import type { Layout, Point, Zone } from '../../../../engine/layout/layout.ts';

export interface Route {
  /** Pixels of the first index, and of the last. */
  readonly first: readonly Point[];
  readonly last: readonly Point[];
  /** Twins run side by side, each in a lane of its own. */
  readonly lanes: readonly Lane[];
}

export interface Lane {
  readonly places: readonly Point[];
  /** For each step from place to place whether it is farther than neighbours are: the light jumps. */
  readonly jumps: readonly boolean[];
}

/** So many usual steps are still a step. */
const jump = 2.5;

export function routeOf(zone: Zone, { pixels }: Layout, side: Side): Route {
  const rows: Point[][] = Array.from({ length: zone.count }, () => []);
  for (const { index, pixel } of zone.entries) rows[index]!.push(pixels[pixel]![side]);
  const lanes = lanesThrough(rows);
  const lengths = lanes.flatMap(stepLengths).sort((a, b) => a - b);
  const usual = lengths[Math.floor(lengths.length / 2)] ?? 0;
  return {
    first: rows[0] ?? [],
    last: rows.at(-1) ?? [],
    lanes: lanes.map((places) => ({
      places,
      jumps: stepLengths(places).map((length) => length > jump * usual),
    })),
  };
}

/** Every place of a row goes on with the lane whose end is nearest; where none is left, a lane begins. */
function lanesThrough(rows: readonly (readonly Point[])[]): Point[][] {
  const lanes: Point[][] = [];
  let open: Point[][] = [];
  for (const row of rows) {
    const free = [...open];
    open = row.map((place) => {
      const lane = nearestLane(free, place);
      if (lane === undefined) {
        const begun = [place];
        lanes.push(begun);
        return begun;
      }
      free.splice(free.indexOf(lane), 1);
      lane.push(place);
      return lane;
    });
  }
  return lanes;
}

function nearestLane(lanes: readonly Point[][], place: Point): Point[] | undefined {
  const far = (lane: Point[]) => gap(lane.at(-1)!, place);
  return lanes.reduce<Point[] | undefined>(
    (best, next) => (best === undefined || far(next) < far(best) ? next : best),
    undefined,
  );
}

function stepLengths(places: readonly Point[]): number[] {
  return places.slice(1).map((place, i) => gap(places[i]!, place));
}

function gap(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}
