/** What can be done to all that is in hand at once. */
import { useId, useState } from 'react';
import { type Alignment, alignRuns } from '../../../../engine/edit/offers/align.ts';
import { reverseRun } from '../../../../engine/edit/offers/reverse.ts';
import { mirroredTwins } from '../../../../engine/edit/offers/twins.ts';
import type { Piece, Run } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import { useStore } from '../../session/store.ts';
import { useHand } from '../hand.ts';
import { takeRuns } from '../in-hand.ts';
import { askToRemove, duplicateHeld, flipHeld, type MirrorLine, mirrorLines } from '../move/actions.ts';
import { runsOf } from '../surface/places.ts';

interface Props {
  readonly piece: Piece;
  readonly inHand: readonly Run[];
}

export function HeldButtons({ piece, inHand }: Props) {
  const session = useSession();
  const hand = useHand();
  const [only] = inHand.length === 1 ? inHand : [];
  return (
    <>
      {inHand.length > 1 && <AlignButtons piece={piece} inHand={inHand} />}
      <div className="button-row">
        <button type="button" className="quiet" onClick={() => duplicateHeld(session)}>
          Duplicate
        </button>
        <button type="button" className="quiet" onClick={() => askToRemove(session, hand)}>
          Remove
        </button>
        {only !== undefined && (
          <button
            type="button"
            className="quiet"
            title="The data comes in at the other end; every pixel stays where it lies"
            onClick={() => {
              session.pull(`Turn the data of run ${only.name} round`, (before) =>
                reverseRun(before, only.name),
              );
              session.endDrag();
            }}
          >
            Turn data round
          </button>
        )}
      </div>
      <MirrorButtons piece={piece} inHand={inHand} />
    </>
  );
}

function MirrorButtons({ piece, inHand }: Props) {
  const session = useSession();
  const id = useId();
  const [line, setLine] = useState<MirrorLine>('upright');
  const twin = () => {
    const before = new Set(runsOf(piece).map(({ name }) => name));
    session.edit(
      mirroredTwins(
        piece,
        inHand.map(({ name }) => name),
        mirrorLines[line].axis,
      ),
    );
    const after = session.bench.get().open?.piece ?? piece;
    const twins = runsOf(after).flatMap(({ name }) => (before.has(name) ? [] : [name]));
    if (twins.length > 0) takeRuns(session, twins);
  };
  return (
    <>
      <div className="number-row">
        <label htmlFor={id}>Mirror at</label>
        <select
          id={id}
          className="wide-value"
          value={line}
          onChange={({ target }) => setLine(target.value === 'level' ? 'level' : 'upright')}
        >
          {Object.entries(mirrorLines).map(([name, { title }]) => (
            <option key={name} value={name}>
              {title}
            </option>
          ))}
        </select>
      </div>
      <div className="button-row">
        <button
          type="button"
          className="quiet"
          title="A mirrored duplicate on the other side, and a zone on which both play the same"
          onClick={twin}
        >
          Make a twin
        </button>
        <button
          type="button"
          className="quiet"
          title="Mirrored about its own middle"
          onClick={() => flipHeld(session, line)}
        >
          Flip in place
        </button>
      </div>
    </>
  );
}

const alignments: readonly { readonly to: Alignment; readonly title: string; readonly picture: string }[] = [
  { to: 'left', title: 'Left ends in line', picture: 'M3 2v16M6 6h11M6 13h7' },
  { to: 'centre', title: 'Middles in line, upright', picture: 'M10 2v16M4 6h12M6.500 13h7' },
  { to: 'right', title: 'Right ends in line', picture: 'M17 2v16M3 6h11M7 13h7' },
  { to: 'top', title: 'Upper ends in line', picture: 'M2 3h16M6 6v11M13 6v7' },
  { to: 'middle', title: 'Middles in line, level', picture: 'M2 10h16M6 4v12M13 6.500v7' },
  { to: 'bottom', title: 'Lower ends in line', picture: 'M2 17h16M6 3v11M13 7v7' },
];

function AlignButtons({ piece, inHand }: Props) {
  const session = useSession();
  const side = useStore(session.desk.side);
  return (
    <fieldset className="align-row" aria-label="Bring in line">
      {alignments.map(({ to, title, picture }) => (
        <button
          key={to}
          type="button"
          className="quiet icon"
          aria-label={title}
          title={title}
          onClick={() =>
            session.edit(
              alignRuns(
                piece,
                side,
                inHand.map(({ name }) => name),
                to,
              ),
            )
          }
        >
          <svg viewBox="0 0 20 20" aria-hidden="true">
            <path d={picture} />
          </svg>
        </button>
      ))}
    </fieldset>
  );
}
