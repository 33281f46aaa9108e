/** Lines laid as strips. */
import { countThatFits, type PathShape } from '../../../../engine/edit/geometry/path.ts';
import { limits } from '../../../../engine/piece/limits.ts';
import { isClosed, type Line } from './nodes.ts';

/** A strip along the whole line: as many pixels as fit, on a closed one without the last falling on the first. */
export function stripAlong(line: Line, pitchMillimetres: number): PathShape {
  const { start, curves } = tidied(line);
  return refitted({ kind: 'path', count: 1, start, curves, pitchMillimetres });
}

/** The path with as many pixels as fit it now. */
export function refitted(path: PathShape): PathShape {
  const fitting = countThatFits(path);
  return { ...path, count: Math.max(1, isClosed(path) ? fitting - 1 : fitting) };
}

/** Whether a line has more curves than a file may hold. */
export function isTooLong({ curves }: Line): boolean {
  return curves.length > limits.curvesPerPath;
}

/** To a hundredth of a millimetre: nobody lays finer, and files stay readable. */
function tidied({ start, curves }: Line): Line {
  return {
    start: tidy(start),
    curves: curves.map(({ firstControl, secondControl, end }) => ({
      firstControl: tidy(firstControl),
      secondControl: tidy(secondControl),
      end: tidy(end),
    })),
  };
}

export function tidy([x, y]: readonly [number, number]): [number, number] {
  return [Math.round(x * 100) / 100 + 0, Math.round(y * 100) / 100 + 0];
}
