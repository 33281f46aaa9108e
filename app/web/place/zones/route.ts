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
  const rows: Stop[][] = Array.from({ length: zone.count }, () => []);
  for (const { index, pixel } of zone.entries) {
    const { run, [side]: place } = pixels[pixel]!;
    rows[index]!.push({ run, place });
  }
  const lanes = lanesThrough(rows).map((lane) => lane.map(({ place }) => place));
  const lengths = lanes.flatMap(stepLengths).sort((a, b) => a - b);
  const usual = lengths[Math.floor(lengths.length / 2)] ?? 0;
  return {
    first: rows[0]?.map(({ place }) => place) ?? [],
    last: rows.at(-1)?.map(({ place }) => place) ?? [],
    lanes: lanes.map((places) => ({
      places,
      jumps: stepLengths(places).map((length) => length > jump * usual),
    })),
  };
}

interface Stop {
  readonly run: number;
  readonly place: Point;
}

/** Every stop of a row goes on with the lane of its run, else with the nearest; where none is left, one begins. */
function lanesThrough(rows: readonly (readonly Stop[])[]): Stop[][] {
  const lanes: Stop[][] = [];
  let open: Stop[][] = [];
  for (const row of rows) {
    const free = [...open];
    open = row.map((stop) => {
      const lane = laneFor(free, stop);
      if (lane === undefined) {
        const begun = [stop];
        lanes.push(begun);
        return begun;
      }
      free.splice(free.indexOf(lane), 1);
      lane.push(stop);
      return lane;
    });
  }
  return lanes;
}

function laneFor(lanes: readonly Stop[][], { run, place }: Stop): Stop[] | undefined {
  const own = lanes.filter((lane) => lane.at(-1)!.run === run);
  const far = (lane: Stop[]) => gap(lane.at(-1)!.place, place);
  return (own.length > 0 ? own : lanes).reduce<Stop[] | undefined>(
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
