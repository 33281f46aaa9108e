/** From path data to curves of cubic pieces, by way of `svgpath`. Fetched when the first drawing is opened. */
import svgpath from 'svgpath';
import { type Cubic, lineAsCubic, quadraticAsCubic, type Spot } from './cubic.ts';
import { type Curve, curveOf } from './nodes.ts';
import type { DrawnLine } from './svg-drawing.ts';

/** What `svgpath` knows of faults in the data; its types leave that out. */
type Parsed = ReturnType<typeof svgpath> & { readonly err: string };

export interface DrawnCurves {
  /** One for each stretch that the pen draws without being lifted. Millimetres, y up. */
  readonly curves: readonly Curve[];
  /** What cannot be read; data before it is drawn nevertheless, as SVG has it. */
  readonly fault: string;
}

/** Arcs become up to four pieces a turn, within 0.03 % of their radius; all else is exact. */
export function curvesOf({ data, transforms }: DrawnLine): DrawnCurves {
  const parsed = svgpath(data) as Parsed;
  const fault = parsed.err;
  for (const transform of [...transforms, 'scale(1 -1)']) parsed.transform(transform);
  const curves: Curve[] = [];
  let pieces: Cubic[] = [];
  let begun: Spot = [0, 0];
  const lift = (closed: boolean) => {
    if (pieces.length > 0) curves.push(tidied(pieces, closed));
    pieces = [];
  };
  parsed
    .abs()
    .unarc()
    .unshort()
    .iterate((segment, _, x, y) => {
      const at: Spot = [x, y];
      const last = (): Spot => [Number(segment.at(-2)), Number(segment.at(-1))];
      const spot = (i: number): Spot => [Number(segment[i]), Number(segment[i + 1])];
      switch (segment[0]) {
        case 'M':
          lift(false);
          begun = last();
          break;
        case 'L':
          pieces.push(lineAsCubic(at, last()));
          break;
        case 'H':
          pieces.push(lineAsCubic(at, [segment[1], y]));
          break;
        case 'V':
          pieces.push(lineAsCubic(at, [x, segment[1]]));
          break;
        case 'Q':
          pieces.push(quadraticAsCubic(at, spot(1), last()));
          break;
        case 'C':
          pieces.push({ start: at, first: spot(1), second: spot(3), end: last() });
          break;
        case 'Z':
        case 'z':
          pieces.push(lineAsCubic(at, begun));
          lift(true);
          break;
      }
    });
  lift(false);
  return { curves, fault };
}

/** Nearer than a thousandth of a millimetre is the same place. */
const sameMillimetres = 1e-3;

/** Without pieces that go nowhere, such as the closing line of a curve that ends where it began. */
function tidied(pieces: readonly Cubic[], closed: boolean): Curve {
  const moving = pieces.filter(
    ({ start, first, second, end }) =>
      Math.max(...[first, second, end].map(([x, y]) => Math.hypot(x - start[0], y - start[1]))) >
      sameMillimetres,
  );
  const kept = moving.length > 0 ? moving : pieces.slice(0, 1);
  if (!closed) return curveOf(kept, false);
  // What is left out may have been what led back to the very start.
  const last = kept.at(-1)!;
  return curveOf([...kept.slice(0, -1), { ...last, end: kept[0]!.start }], true);
}
