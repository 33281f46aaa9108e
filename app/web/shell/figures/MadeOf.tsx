/** Tables under a figure: what it is made of, in the numbers of this very piece. */
import { useEffect, useState } from 'react';
import { useSession } from '../../session/context.ts';
import { usePart } from '../../session/store.ts';
import { milliamps as words } from '../../session/words.ts';
import type { ShownFrame } from '../../worker/protocol.ts';
import { readableEveryMs } from './readable.ts';
import { lightShares, restShares, type Share, totalOf } from './shares.ts';

/** The frame that is shown, colour by colour. */
export function NowMadeOf() {
  const session = useSession();
  const open = usePart(session.bench, (bench) => bench.open);
  const [frame, setFrame] = useState<ShownFrame | null>(session.frames.latest);
  useEffect(() => {
    const timer = window.setInterval(() => setFrame(session.frames.latest), readableEveryMs);
    return () => window.clearInterval(timer);
  }, [session]);
  if (open === null || frame === null) return null;
  const { piece, view } = open;
  const shares = [...restShares(piece, view.hidden.length), ...lightShares(piece, view, frame.drive)];
  const { limitMilliamps } = piece.supply;
  return (
    <>
      The frame that is shown.
      <Shares shares={shares} total={totalOf(shares)} />
      <p className="whisper">
        {frame.limited
          ? `It would draw more than the limit of ${words(limitMilliamps)}, so all of it is dimmed alike.`
          : `Within the limit of ${words(limitMilliamps)}.`}
      </p>
    </>
  );
}

/** A current of a whole look: what is not drawn at rest is light. */
export function CurrentMadeOf({ milliamps }: { milliamps: number }) {
  const session = useSession();
  const open = usePart(session.bench, (bench) => bench.open);
  if (open === null) return null;
  const { piece, view } = open;
  const rest = restShares(piece, view.hidden.length);
  const light = Math.max(0, milliamps - totalOf(rest));
  const { limitMilliamps } = piece.supply;
  return (
    <>
      <Shares shares={[...rest, { name: 'light', by: 'all colours', milliamps: light }]} total={milliamps} />
      <p className="whisper">
        The limit is {words(limitMilliamps)}. Pixels of one part differ: measure the finished piece.
      </p>
    </>
  );
}

function Shares({ shares, total }: { shares: readonly Share[]; total: number }) {
  return (
    <table className="shares">
      <tbody>
        {shares.map(({ name, by, milliamps }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{by}</td>
            <td>{milliamps.toFixed(1)}</td>
          </tr>
        ))}
        <tr className="total">
          <th scope="row">together</th>
          <td />
          <td>{total.toFixed(1)} mA</td>
        </tr>
      </tbody>
    </table>
  );
}
