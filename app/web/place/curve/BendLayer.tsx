/** The nodes and handles of a path on the table: pulled by pointer, nudged by keys. */
import type { KeyboardEvent, PointerEvent } from 'react';
import { insertNode, type PathShape } from '../../../../engine/edit/geometry/path.ts';
import type { Place } from '../../../../engine/layout/cubic.ts';
import type { Point } from '../../../../engine/layout/layout.ts';
import { useSession } from '../../session/context.ts';
import { usePart } from '../../session/store.ts';
import { type ToolOf, useHand } from '../hand.ts';
import { useCamera } from '../surface/context.ts';
import { runsOf } from '../surface/places.ts';
import { startPull } from '../surface/pull.ts';
import { Cover } from '../tools/Cover.tsx';
import { bendName, bendRun, pathOn } from './bend.ts';
import { pathData } from './draw-path.ts';
import { isSmooth, moveHandle, moveNode, nearestOn, nodesOf, removeNode } from './nodes.ts';
import { tidy } from './path-shape.ts';

const strides: Readonly<Record<string, Place>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Pixels of the screen within which a double press means the curve. */
const reachPixels = 12;

export function BendLayer({ tool }: { tool: ToolOf<'bend'> }) {
  const session = useSession();
  const hand = useHand();
  const view = useCamera();
  const { side } = view;
  const run = usePart(session.bench, ({ open }) =>
    open === null ? undefined : runsOf(open.piece).find(({ name }) => name === tool.run),
  );
  const path = run && pathOn(run, side);
  if (path === undefined) return null;

  const choose = (node: number | null) => {
    if (tool.node !== node) hand.take({ ...tool, node });
  };
  const bend = (change: (before: PathShape) => PathShape) =>
    session.pull(bendName(tool.run), (piece) => {
      const before = runsOf(piece).find(({ name }) => name === tool.run)!;
      return bendRun(piece, before, side, change(pathOn(before, side)!));
    });
  const step = (change: (before: PathShape) => PathShape) => {
    session.endDrag();
    bend(change);
    session.endDrag();
  };
  const pull = (
    event: PointerEvent<Element>,
    node: number,
    change: (path: PathShape, to: Place) => PathShape,
  ) => {
    session.endDrag();
    session.desk.side.set(side);
    const follow = ({ to }: { to: Point }) => bend((before) => change(before, tidy([to.x, to.y])));
    startPull(event, view, {
      move: follow,
      end: () => session.endDrag(),
      bail: () => session.bailDrag(),
    });
    choose(node);
  };
  const nudge = (event: KeyboardEvent, from: Place, change: (path: PathShape, to: Place) => PathShape) => {
    const stride = strides[event.key];
    if (stride === undefined || event.ctrlKey || event.metaKey) return false;
    const far = event.shiftKey ? 10 : event.altKey ? 0.1 : 1;
    step((before) => change(before, tidy([from[0] + stride[0] * far, from[1] + stride[1] * far])));
    event.preventDefault();
    event.stopPropagation();
    return true;
  };

  const addAt = (event: { clientX: number; clientY: number }) => {
    const { x, y } = view.toMillimetres(event.clientX, event.clientY);
    const { curve, at, millimetresAway } = nearestOn(path, [x, y]);
    if (millimetresAway > reachPixels * view.millimetresPerPixel || at < 0.02 || at > 0.98) return;
    step((before) => insertNode(before, curve, at));
    choose(curve + 1);
  };

  const nodes = nodesOf(path);
  const seen = ([x, y]: Place): Place => {
    const at = view.toView({ x, y });
    return [at.x, at.y];
  };
  const near = (node: number) => tool.node !== null && Math.abs(node - tool.node) <= 1;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the section of the tag has a button that adds a node.
    <g className="bending" onDoubleClick={addAt}>
      <Cover onDown={(event) => startPull(event, view, { click: () => choose(null) })} />
      <path className="course" d={pathData(path, seen)} />
      {nodes.map((node, i) =>
        near(i)
          ? (['back', 'ahead'] as const).map((handle) => (
              <HandleKnob
                // biome-ignore lint/suspicious/noArrayIndexKey: a node is its place along the path.
                key={`${i} ${handle}`}
                label={`Handle ${handle === 'back' ? 'before' : 'after'} node ${i + 1}`}
                from={seen(node.at)}
                at={seen(node[handle])}
                hidden={isDrawnIn(node.at, node[handle])}
                onDown={(event) => pull(event, i, (before, to) => moveHandle(before, i, handle, to))}
                onKey={(event) =>
                  nudge(event, node[handle], (before, to) => moveHandle(before, i, handle, to))
                }
              />
            ))
          : null,
      )}
      {nodes.map((node, i) => {
        const [x, y] = seen(node.at);
        const kind = isSmooth(node) ? 'smooth' : 'corner';
        return (
          // biome-ignore lint/a11y/useSemanticElements: SVG has no button.
          <g
            // biome-ignore lint/suspicious/noArrayIndexKey: a node is its place along the path.
            key={i}
            className="node"
            role="button"
            tabIndex={0}
            aria-pressed={tool.node === i}
            aria-label={`Node ${i + 1} of ${nodes.length}, ${kind}: arrow keys move it`}
            data-kind={kind}
            transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}
            onPointerDown={(event) => pull(event, i, (before, to) => moveNode(before, i, to))}
            onFocus={() => choose(i)}
            onKeyDown={(event) => {
              if (nudge(event, node.at, (before, to) => moveNode(before, i, to))) return;
              if (event.key !== 'Delete' && event.key !== 'Backspace') return;
              event.preventDefault();
              event.stopPropagation();
              step((before) => removeNode(before, i));
              choose(null);
            }}
          >
            <circle className="reach" r="16" />
            {kind === 'smooth' ? (
              <circle r="6" />
            ) : (
              <rect x="-5.500" y="-5.500" width="11" height="11" rx="1" />
            )}
          </g>
        );
      })}
    </g>
  );
}

/** Under its node it could not be seen, and would be in the way. */
function isDrawnIn(node: Place, handle: Place): boolean {
  return Math.hypot(node[0] - handle[0], node[1] - handle[1]) < 0.01;
}

interface KnobProps {
  readonly label: string;
  readonly from: Place;
  readonly at: Place;
  readonly hidden: boolean;
  onDown(event: PointerEvent<Element>): void;
  onKey(event: KeyboardEvent): void;
}

function HandleKnob({ label, from, at, hidden, onDown, onKey }: KnobProps) {
  if (hidden) return null;
  const [x, y] = at;
  return (
    <>
      <path className="stem" d={`M${from[0]} ${from[1]}L${x} ${y}`} />
      {/* biome-ignore lint/a11y/useSemanticElements: SVG has no button. */}
      <g
        className="handle"
        role="button"
        tabIndex={0}
        aria-label={`${label}: arrow keys move it`}
        transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}
        onPointerDown={onDown}
        onKeyDown={onKey}
      >
        <circle className="reach" r="14" />
        <circle r="4.500" />
      </g>
    </>
  );
}
