/** A line drawn around pixels: what it goes around becomes a zone, or joins one. */
import { type PointerEvent, useState } from 'react';
import type { Point } from '../../../../engine/layout/layout.ts';
import { useSession } from '../../session/context.ts';
import { type ToolOf, useHand } from '../hand.ts';
import { useCamera } from '../surface/context.ts';
import { startPull } from '../surface/pull.ts';
import { Cover } from '../tools/Cover.tsx';
import { caughtBy, thinned } from './lasso.ts';
import { layoutOf } from './layout-of.ts';
import { makeZone, sourceOfAddresses, withMore } from './make.ts';

/** Pixels of the screen between two points of the line. */
const finest = 3;

export function LassoLayer({ tool }: { tool: ToolOf<'lasso'> }) {
  const session = useSession();
  const hand = useHand();
  const view = useCamera();
  const [line, setLine] = useState<readonly Point[]>([]);

  const onDown = (event: PointerEvent<SVGRectElement>) => {
    const piece = session.bench.get().open?.piece;
    if (piece === undefined) return;
    const { pixels } = layoutOf(piece);
    const places = pixels.map((pixel) => pixel[view.side]);
    let drawn: Point[] = [];
    const caught = () => caughtBy(drawn, places).filter((address) => !pixels[address]!.hidden);
    const rest = () => {
      setLine([]);
      session.desk.pointed.set([]);
    };
    startPull(event, view, {
      move({ from, to }) {
        drawn = thinned(drawn.length === 0 ? [from, to] : [...drawn, to], finest * view.millimetresPerPixel);
        setLine(drawn);
        session.desk.pointed.set(caught());
      },
      end() {
        rest();
        if (tool.into === null) {
          const source = sourceOfAddresses(piece, caught());
          if (source !== undefined) makeZone(session, hand, source);
        } else {
          const source = withMore(piece, tool.into, caught());
          if (source !== undefined) session.edit({ kind: 'set-zone', zone: tool.into, set: { source } });
        }
        if (caught().length > 0) hand.putAway();
      },
      bail: rest,
    });
  };

  return (
    <g className="lasso">
      <Cover onDown={onDown} />
      {line.length > 1 && <path d={`M${line.map(view.toView).map(spot).join('L')}Z`} />}
    </g>
  );
}

function spot({ x, y }: Point): string {
  return `${x.toFixed(1)} ${y.toFixed(1)}`;
}
