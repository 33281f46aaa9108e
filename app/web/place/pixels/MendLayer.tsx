/** Taps on the pixels of a run cut them out or hide them; a drag goes on with what its first pixel became. */
import type { PointerEvent } from 'react';
import type { Point } from '../../../../engine/layout/layout.ts';
import { useSession } from '../../session/context.ts';
import { usePart } from '../../session/store.ts';
import type { ToolOf } from '../hand.ts';
import { useCamera } from '../surface/context.ts';
import { placesOf, runsOf, shapeOn } from '../surface/places.ts';
import { startPull } from '../surface/pull.ts';
import { Cover } from '../tools/Cover.tsx';
import { nearestWithin } from './near.ts';
import { setStates, statesOf, tapped } from './states.ts';

/** Pixels of the screen around a pixel of the run: half a fingertip. */
const reachPixels = 22;

export function MendLayer({ tool }: { tool: ToolOf<'mend'> }) {
  const session = useSession();
  const view = useCamera();
  const run = usePart(
    session.bench,
    ({ open }) => open && runsOf(open.piece).find(({ name }) => name === tool.run),
  );
  if (run === null || run === undefined) return null;
  const places = placesOf(shapeOn(run, view.side));

  const onDown = (event: PointerEvent<SVGRectElement>) => {
    let wanted: ReturnType<typeof tapped> | undefined;
    const touch = (at: Point) => {
      const open = session.bench.get().open;
      const now = open && runsOf(open.piece).find(({ name }) => name === tool.run);
      const position = nearestWithin(places, at, reachPixels * view.millimetresPerPixel);
      if (!now || position === undefined) return;
      const state = statesOf(now)[position]!;
      wanted ??= tapped(state, tool.to);
      if (state !== wanted) session.edit(setStates(now, [position], wanted), 'drag');
    };
    session.endDrag();
    startPull(event, view, {
      move({ from, to }) {
        if (wanted === undefined) touch(from);
        touch(to);
      },
      end: () => session.endDrag(),
      click({ to }) {
        touch(to);
        session.endDrag();
      },
      bail: () => session.bailDrag(),
    });
  };

  return (
    <g className="mending" data-to={tool.to}>
      {statesOf(run).map((state, position) => {
        const { x, y } = view.toView(places[position]!);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a pixel is its position.
          <g key={position} className={state} transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}>
            <circle r="6" />
            {state === 'removed' && <path d="M-4 -4L4 4M4 -4L-4 4" />}
          </g>
        );
      })}
      <Cover onDown={onDown} />
    </g>
  );
}
