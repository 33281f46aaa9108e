/** Around what is in hand: a knob to turn it, a corner to scale it, and the grips of a single run. */
import type { PointerEvent } from 'react';
import { snapDegrees } from '../../../../engine/edit/snap/snap-plane.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import type { Piece, Run } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { useHand } from '../hand.ts';
import { useRunsInHand } from '../in-hand.ts';
import { boxAround, middleOf } from '../surface/box.ts';
import { useCamera } from '../surface/context.ts';
import { placesOn, shapeOn } from '../surface/places.ts';
import { type Pull, startPull } from '../surface/pull.ts';
import { degreeWords, runWords } from '../words.ts';
import { gripsOf } from './grips.ts';

export function Handles({ piece }: { piece: Piece }) {
  const { side } = useCamera();
  const session = useSession();
  const hand = useHand();
  const inHand = useRunsInHand(piece);
  const tool = useStore(hand.tool);
  const worksHere = useStore(session.desk.side) === side;
  if (inHand.length === 0 || tool.kind !== 'pick' || !worksHere) return null;
  return <HandlesOf runs={inHand} />;
}

/** Pixels between what is in hand and the lines around it. */
const air = 16;
const stem = 26;
const nameHeight = 40;
const turnStep = 15;
const leastFactor = 0.02;

function HandlesOf({ runs }: { runs: readonly Run[] }) {
  const session = useSession();
  const hand = useHand();
  const view = useCamera();
  const { side, toView } = view;
  const box = boxAround(placesOn(runs, side))!;
  const middle = middleOf(box);
  const [a, b] = [toView({ x: box.left, y: box.top }), toView({ x: box.right, y: box.bottom })];
  const frame = { x: a.x - air, y: a.y - air, width: b.x - a.x + 2 * air, height: b.y - a.y + 2 * air };
  const [above, below] = [frame.y - stem, frame.y + frame.height + stem];
  // Where it would stand on the name of the table, it stands at the foot of the frame.
  const isHigh = above < nameHeight;
  const knob = { x: frame.x + frame.width / 2, y: isHigh ? below : above };
  const corner = { x: frame.x + frame.width, y: frame.y + frame.height };
  const names = runs.map(({ name }) => name);
  const [only] = runs.length === 1 ? runs : [];
  const grips = only === undefined ? [] : gripsOf(only, side);
  const scales = only === undefined || shapeOn(only, side).kind === 'points';

  const grab = (event: PointerEvent<Element>, pull: Pull) => {
    session.endDrag();
    startPull(event, view, {
      ...pull,
      end() {
        hand.readout.set(null);
        session.endDrag();
      },
      bail() {
        hand.readout.set(null);
        session.bailDrag();
      },
    });
  };

  const turn = (event: PointerEvent<Element>) =>
    grab(event, {
      move({ from, to, free }) {
        const wanted = angle(middle, to) - angle(middle, from);
        const degrees = free || !hand.snaps.get() ? wanted : snapDegrees(wanted, turnStep);
        const about: [number, number] = [middle.x, middle.y];
        session.edit({ kind: 'turn-runs', side, runs: names, about, degrees }, 'pull');
        hand.readout.set({ side, at: to, words: degreeWords(degrees) });
      },
    });

  const scale = (event: PointerEvent<Element>) => {
    const still = { x: box.left, y: box.top };
    grab(event, {
      move({ from, to }) {
        const factor = Math.max(leastFactor, distance(still, to) / Math.max(1e-9, distance(still, from)));
        session.edit({ kind: 'scale-runs', side, runs: names, about: [still.x, still.y], factor }, 'pull');
        hand.readout.set({
          side,
          at: to,
          words: `${Math.round(factor * 100)} %, pixels move apart or together`,
        });
      },
    });
  };

  return (
    <g className="handles">
      <rect className="held-frame" {...frame} rx={6} />
      <path className="stem" d={`M${knob.x} ${isHigh ? below - stem : frame.y}V${knob.y}`} />
      <Knob at={knob} title="Turn" onDown={turn} />
      {scales && (
        <Knob at={corner} title="Scale: pixels move apart or together" onDown={scale} look="square" />
      )}
      {grips.map((grip) => (
        <Knob
          key={grip.name}
          at={toView(grip.at)}
          title={grip.title}
          onDown={(event) =>
            grab(event, {
              move({ to, free }) {
                const loose = free || !hand.snaps.get();
                session.pull(`Pull the ${grip.name} of run ${names[0]}`, (piece) =>
                  grip.pull(piece, to, loose),
                );
                hand.readout.set({
                  side,
                  at: to,
                  words: wordsOf(session.bench.get().open?.piece, names[0]!),
                });
              },
            })
          }
          look={grip.name.startsWith('pixel') ? 'pixel' : 'square'}
        />
      ))}
    </g>
  );
}

interface KnobProps {
  readonly at: Point;
  readonly title: string;
  readonly onDown: (event: PointerEvent<SVGGElement>) => void;
  readonly look?: 'round' | 'square' | 'pixel';
}

/** Drawn small, grabbed large. For keys there are other ways: see the help under the table. */
function Knob({ at, title, onDown, look = 'round' }: KnobProps) {
  return (
    <g className="knob" transform={`translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})`} onPointerDown={onDown}>
      <title>{title}</title>
      <circle className="knob-reach" r={look === 'pixel' ? 9 : 16} />
      {look === 'square' ? (
        <rect x={-5.5} y={-5.5} width={11} height={11} rx={2} />
      ) : (
        <circle className="knob-dot" r={look === 'pixel' ? 4 : 6} />
      )}
    </g>
  );
}

function wordsOf(piece: Piece | undefined, name: string): string {
  const run = piece?.lines.flatMap(({ runs }) => runs).find((each) => each.name === name);
  return run === undefined ? '' : runWords(run);
}

function distance(a: Point, b: Point): number {
  return Math.hypot(b.x - a.x, b.y - a.y);
}

function angle(from: Point, to: Point): number {
  return (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
}
