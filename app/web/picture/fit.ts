/** Where the pixels of a piece stand in the picture. */

export interface Fit {
  /** x and y (down) of each pixel, in picture units. */
  readonly spots: Float32Array;
  /** Distance between neighbours that the size of a glow goes by. */
  readonly pitch: number;
}

/** Keeps lights and their glow off the edge. */
const marginShare = 0.09;

/** Fits worn places (millimetres, y up) into a box, centred, without stretching. */
export function fitPlaces(places: Float32Array, width: number, height: number): Fit {
  const count = places.length / 2;
  let [left, right, bottom, top] = [Infinity, -Infinity, Infinity, -Infinity];
  for (let i = 0; i < count; i++) {
    left = Math.min(left, places[2 * i]!);
    right = Math.max(right, places[2 * i]!);
    bottom = Math.min(bottom, places[2 * i + 1]!);
    top = Math.max(top, places[2 * i + 1]!);
  }
  const margin = Math.min(width, height) * marginShare;
  const wide = Math.max(right - left, 1);
  const high = Math.max(top - bottom, 1);
  const scale = Math.min((width - 2 * margin) / wide, (height - 2 * margin) / high);
  const spots = new Float32Array(places.length);
  for (let i = 0; i < count; i++) {
    spots[2 * i] = width / 2 + (places[2 * i]! - (left + right) / 2) * scale;
    spots[2 * i + 1] = height / 2 - (places[2 * i + 1]! - (top + bottom) / 2) * scale;
  }
  return { spots, pitch: typicalPitch(places) * scale };
}

/**
 * The median distance to the next pixel of the line: jumps from run to run are rare, and pixels that
 * stand on top of each other (an edge-on ring) should not shrink the others.
 */
export function typicalPitch(places: Float32Array): number {
  const steps: number[] = [];
  for (let i = 2; i < places.length; i += 2) {
    steps.push(Math.hypot(places[i]! - places[i - 2]!, places[i + 1]! - places[i - 1]!));
  }
  steps.sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 2)] || 20;
}
