/** From path data to lines of cubic curves, by way of `svgpath`. Fetched when the first drawing is opened. */
import svgpath from 'svgpath';
import type { Cubic, Place } from '../../../../engine/layout/cubic.ts';
import { lineAsCubic, quadraticAsCubic } from './cubic.ts';
import type { Line } from './nodes.ts';
import type { DrawnPath } from './svg-drawing.ts';

/** What `svgpath` knows of faults in the data; its types leave that out. */
type Parsed = ReturnType<typeof svgpath> & { readonly err: string };

export interface DrawnLines {
  /** One for each stretch that the pen draws without being lifted. Millimetres, y up. */
  readonly lines: readonly Line[];
  /** What cannot be read; data before it is drawn nevertheless, as SVG has it. */
  readonly fault: string;
}

/** Arcs become up to four curves a turn, within 0.03 % of their radius; all else is exact. */
export function linesOfPath({ data, transforms }: DrawnPath): DrawnLines {
  const { err: fault } = svgpath(data) as Parsed;
  // Arcs first: mirrored ones would bend the other way.
  const parsed = svgpath(data).abs().unarc().unshort();
  for (const transform of [...transforms, 'scale(1 -1)']) parsed.transform(transform);
  const lines: Line[] = [];
  let cubics: Cubic[] = [];
  let begun: Place = [0, 0];
  const lift = (closed: boolean) => {
    if (cubics.length > 0) lines.push(lineOf(cubics, closed));
    cubics = [];
  };
  parsed.iterate((segment, _, x, y) => {
    const at: Place = [x, y];
    const spot = (i: number): Place => [Number(segment[i]), Number(segment[i + 1])];
    switch (segment[0]) {
      case 'M':
        lift(false);
        begun = spot(1);
        break;
      case 'L':
        cubics.push(lineAsCubic(at, spot(1)));
        break;
      case 'H':
        cubics.push(lineAsCubic(at, [segment[1], y]));
        break;
      case 'V':
        cubics.push(lineAsCubic(at, [x, segment[1]]));
        break;
      case 'Q':
        cubics.push(quadraticAsCubic(at, spot(1), spot(3)));
        break;
      case 'C':
        cubics.push({ start: at, firstControl: spot(1), secondControl: spot(3), end: spot(5) });
        break;
      case 'Z':
      case 'z':
        cubics.push(lineAsCubic(at, begun));
        lift(true);
        break;
    }
  });
  lift(false);
  return { lines, fault };
}

/** Nearer than a thousandth of a millimetre is the same place. */
const sameMillimetres = 1e-3;

/** Without curves that go nowhere, such as the closing one of a line that ends where it began. */
function lineOf(cubics: readonly Cubic[], closed: boolean): Line {
  const moving = cubics.filter(({ start, firstControl, secondControl, end }) =>
    [firstControl, secondControl, end].some(
      ([x, y]) => Math.hypot(x - start[0], y - start[1]) > sameMillimetres,
    ),
  );
  const kept = moving.length > 0 ? moving : cubics.slice(0, 1);
  const [startX, startY] = kept[0]!.start;
  return {
    start: [startX, startY],
    curves: kept.map(({ firstControl, secondControl, end }, i) => ({
      firstControl: [...firstControl],
      secondControl: [...secondControl],
      // What was left out may have been what led back to the very start.
      end: closed && i === kept.length - 1 ? [startX, startY] : [...end],
    })),
  };
}
