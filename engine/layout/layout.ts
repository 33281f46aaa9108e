/** What the rest of the engine knows of a piece's geometry. `prepareLayout` (prepare.ts) makes it. */

export interface Point {
  /** Millimetres, x to the right, y up. */
  readonly x: number;
  readonly y: number;
}

/** One address on the line. */
export interface Pixel {
  /** Index of the run on the line, and the position in that run before anything was removed. */
  readonly run: number;
  readonly position: number;
  /** Wired, but always dark and in no zone. */
  readonly hidden: boolean;
  readonly flat: Point;
  readonly worn: Point;
}

export interface ZoneEntry {
  /** Address on the line: index into `Layout.pixels`. */
  readonly pixel: number;
  /** Index in the zone, 0 .. count - 1. Twins share one. */
  readonly index: number;
}

export interface Zone {
  readonly name: string;
  /** Highest index + 1. */
  readonly count: number;
  readonly entries: readonly ZoneEntry[];
  /**
   * Worn place of each entry in Q2.14, x then y: the centre of the zone's bounding box is 0, its
   * longer side -16384 .. 16384; all 0 if the box is a point. `round`, halves up.
   */
  readonly places: Int16Array;
}

export interface Layout {
  readonly pixels: readonly Pixel[];
  /**
   * `all`, one zone a run by its name, then the piece's own zones, by name. Only the zone of a run that
   * stays dark as a whole is empty, and no clip plays on it.
   */
  readonly zones: ReadonlyMap<string, Zone>;
}
