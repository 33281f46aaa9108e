/** The data line: the board's plug at the first pixel, arrows along each run, wires from run to run. */
import type { Point } from '../../../../engine/layout/layout.ts';
import { cutLength, usualSlack } from '../../../../engine/layout/wires.ts';
import type { Piece, Run } from '../../../../engine/piece/schema.ts';
import { lengthWords } from '../words.ts';
import { useCamera } from './context.ts';
import { labelsApart } from './labels.ts';
import { type Arrow, arrowsAlong, jumpsBetween, wiredPlaces } from './line-path.ts';

/** Lie under the runs. */
export function Wires({ piece }: { piece: Piece }) {
  const wires = useWires(piece);
  return <path className="wire" d={wires.map(({ from, to }) => `M${spot(from)}L${spot(to)}`).join('')} />;
}

/** Lies on the runs. What to cut is told on the bench only: on the body nobody cuts wire. */
export function DataLine({ piece }: { piece: Piece }) {
  const { side } = useCamera();
  const wires = useWires(piece);
  return (
    <g className="data-line">
      {piece.lines.map(({ pin, runs }) => (
        <LineArrows key={pin} runs={runs} />
      ))}
      {side === 'flat' &&
        labelsApart(wires).map(({ x, y, words }) => (
          <text key={`${x} ${y}`} className="wire-length" x={x} y={y + 4}>
            {words}
          </text>
        ))}
    </g>
  );
}

/** From run to run, in the view. */
function useWires(piece: Piece) {
  const { side, toView } = useCamera();
  return piece.lines.flatMap(({ runs }) =>
    jumpsBetween(runs, side).map(({ from, to, millimetres }) => ({
      from: toView(from),
      to: toView(to),
      words: lengthWords(cutLength(millimetres, usualSlack)),
    })),
  );
}

/** Pixels from arrow to arrow, about. */
const arrowsApart = 130;

function LineArrows({ runs }: { runs: readonly Run[] }) {
  const { side, toView } = useCamera();
  const ways = runs.map((run) => wiredPlaces(run, side).map(toView));
  const first = ways.find((way) => way.length > 0);
  return (
    <>
      <path
        className="arrows"
        d={ways.flatMap((way) => arrowsAlong(way, arrowsApart).map(headPath)).join('')}
      />
      {first !== undefined && <Plug at={first[0]!} next={first[1]} />}
    </>
  );
}

/** Two short strokes that meet at the tip. */
function headPath({ at, degrees }: Arrow): string {
  const stroke = (turn: number) => {
    const radians = ((degrees + turn) * Math.PI) / 180;
    return { x: at.x - 8 * Math.cos(radians), y: at.y - 8 * Math.sin(radians) };
  };
  return `M${spot(stroke(40))}L${spot(at)}L${spot(stroke(-40))}`;
}

/** Stands where the strip would come from. */
function Plug({ at, next }: { at: Point; next: Point | undefined }) {
  const back = next === undefined ? 0 : Math.atan2(next.y - at.y, next.x - at.x);
  const degrees = (back * 180) / Math.PI;
  return (
    <g className="plug" transform={`translate(${spot(at)}) rotate(${degrees.toFixed(1)})`}>
      <title>The plug to the board: here the data comes in</title>
      <path className="cord" d="M-20 0H-5" />
      <rect x="-38" y="-7.500" width="18" height="15" rx="3" />
      <path className="pins" d="M-33 -3.500h8M-33 0h8M-33 3.500h8" />
      <circle r="4" />
    </g>
  );
}

function spot({ x, y }: Point): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}
