/** The data line: the board's plug at the first pixel, arrows along each run, wires from run to run. */
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Piece, Run } from '../../../../engine/piece/schema.ts';
import { lengthWords } from '../words.ts';
import { useCamera } from './context.ts';
import { type Arrow, arrowsAlong, jumpsBetween, wiredPlaces } from './line-path.ts';

export function DataLine({ piece }: { piece: Piece }) {
  return (
    <g className="data-line">
      {piece.lines.map(({ pin, runs }) => (
        <Line key={pin} runs={runs} />
      ))}
    </g>
  );
}

function Line({ runs }: { runs: readonly Run[] }) {
  const { side, toView } = useCamera();
  const ways = runs.map((run) => wiredPlaces(run, side).map(toView));
  const first = ways.find((way) => way.length > 0);
  return (
    <>
      {jumpsBetween(runs, side).map(({ from, to, millimetres }, i) => (
        <Wire
          // biome-ignore lint/suspicious/noArrayIndexKey: wires have no name but their place in the line.
          key={i}
          from={toView(from)}
          to={toView(to)}
          words={side === 'flat' ? lengthWords(millimetres) : ''}
        />
      ))}
      <path className="arrows" d={ways.flatMap((way) => arrowsAlong(way, 130).map(headPath)).join('')} />
      {first !== undefined && <Plug at={first[0]!} next={first[1]} />}
    </>
  );
}

function Wire({ from, to, words }: { from: Point; to: Point; words: string }) {
  const long = Math.hypot(to.x - from.x, to.y - from.y);
  return (
    <>
      <path className="wire" d={`M${from.x} ${from.y}L${to.x} ${to.y}`} />
      {words !== '' && long > 64 && (
        <text className="wire-length" x={(from.x + to.x) / 2} y={(from.y + to.y) / 2 + 4}>
          {words}
        </text>
      )}
    </>
  );
}

/** Two short strokes that meet at the tip. */
function headPath({ at, degrees }: Arrow): string {
  const stroke = (turn: number) => {
    const radians = ((degrees + turn) * Math.PI) / 180;
    return { x: at.x - 7 * Math.cos(radians), y: at.y - 7 * Math.sin(radians) };
  };
  const [left, right] = [stroke(34), stroke(-34)];
  return `M${spot(left)}L${spot(at)}L${spot(right)}`;
}

function spot({ x, y }: Point): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}

/** Stands where the strip would come from. */
function Plug({ at, next }: { at: Point; next: Point | undefined }) {
  const back = next === undefined ? 0 : Math.atan2(next.y - at.y, next.x - at.x);
  const degrees = (back * 180) / Math.PI;
  return (
    <g
      className="plug"
      transform={`translate(${at.x.toFixed(1)} ${at.y.toFixed(1)}) rotate(${degrees.toFixed(1)})`}
    >
      <path className="cord" d="M-22 0H-6" />
      <rect x="-40" y="-7" width="18" height="14" rx="3" />
      <path className="pins" d="M-22 -3.500h5M-22 3.500h5" />
    </g>
  );
}
