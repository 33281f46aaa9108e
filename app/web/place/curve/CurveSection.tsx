/** The nodes of a path in the tag: drawn on the table, added, taken out, made smooth or a corner by buttons. */
import { insertNode, type PathShape } from '../../../../engine/edit/geometry/path.ts';
import type { Run } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { Ask } from '../../shell/Ask.tsx';
import { useHand } from '../hand.ts';
import { runsOf } from '../surface/places.ts';
import { pixelWords } from '../words.ts';
import { bendName, bendRun, fillRun, pathOn } from './bend.ts';
import { canLoseNode, cornerNode, isSmooth, nodesOf, removeNode, smoothNode } from './nodes.ts';
import { refitted } from './path-shape.ts';
import '../../styles/place-curve.css';

export function CurveSection({ run }: { run: Run }) {
  const session = useSession();
  const hand = useHand();
  const tool = useStore(hand.tool);
  const side = useStore(session.desk.side);
  const path = pathOn(run, side);
  if (path === undefined) return null;
  const bends = tool.kind === 'bend' && tool.run === run.name;
  const chosen = bends ? tool.node : null;
  const nodes = nodesOf(path);
  const node = chosen === null ? undefined : nodes[chosen];

  const step = (change: (before: PathShape) => PathShape, next: number | null) => {
    session.endDrag();
    session.pull(bendName(run.name), (piece) => {
      const before = runsOf(piece).find(({ name }) => name === run.name)!;
      return bendRun(piece, before, side, change(pathOn(before, side)!));
    });
    session.endDrag();
    hand.take({ kind: 'bend', run: run.name, node: next });
  };
  const fitting = refitted(path).count;

  return (
    <div className="curve-fields">
      <button
        type="button"
        className="quiet wide"
        aria-pressed={bends}
        onClick={() => (bends ? hand.putAway() : hand.take({ kind: 'bend', run: run.name, node: 0 }))}
      >
        {bends ? 'Done' : 'Bend it on the table'}
      </button>
      {bends && (
        <>
          <p className="whisper">
            {node === undefined
              ? `${nodes.length} nodes. Choose one; a double press on the curve adds one.`
              : `Node ${chosen! + 1} of ${nodes.length}, ${isSmooth(node) ? 'smooth' : 'a corner'}.`}
            <Ask about="nodes and handles">
              The curve goes through its nodes. The handles of a node are the directions in which it leaves
              it, and how strongly: pull them and the curve follows.
            </Ask>
          </p>
          <div className="button-row">
            <button
              type="button"
              className="quiet"
              onClick={() => {
                const curve = Math.min(chosen ?? 0, path.curves.length - 1);
                step((before) => insertNode(before, curve, 1 / 2), curve + 1);
              }}
            >
              Add a node
            </button>
            <button
              type="button"
              className="quiet"
              disabled={node === undefined || !canLoseNode(path)}
              onClick={() => step((before) => removeNode(before, chosen!), null)}
            >
              Take it out
            </button>
            {node !== undefined && (
              <button
                type="button"
                className="quiet"
                onClick={() =>
                  step((before) => (isSmooth(node) ? cornerNode : smoothNode)(before, chosen!), chosen)
                }
              >
                {isSmooth(node) ? 'Make a corner' : 'Make it smooth'}
              </button>
            )}
          </div>
        </>
      )}
      {side === 'flat' && fitting !== path.count && (
        <button
          type="button"
          className="quiet wide"
          onClick={() => {
            session.endDrag();
            session.pull(bendName(run.name), (piece) => fillRun(piece, run, path));
            session.endDrag();
          }}
        >
          Fill the curve: {pixelWords(fitting)}
        </button>
      )}
    </div>
  );
}
