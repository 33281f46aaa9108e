/** Which pattern the clip plays; what fits of its settings is kept. */
import { choosePattern } from '../../../engine/edit/offers/pattern.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { Choice } from './Choice.tsx';
import { useClipInHand, useClipPart } from './clip-in-hand.ts';
import { RowFault } from './RowFault.tsx';

const row = 'pattern';

export function PatternRow() {
  const session = useSession();
  const hand = useClipInHand();
  const pattern = useClipPart((clip) => clip.pattern);
  const library = useStore(session.loft.library);
  const own = usePart(session.bench, ({ open }) => open?.piece.patterns);
  const choose = (name: string) => {
    const now = hand.now();
    const edit = now && choosePattern(now.piece, now.at, name).value;
    if (edit !== undefined) hand.edit(row, () => edit);
  };
  return (
    <>
      <Choice label="Pattern" value={pattern} onChange={choose}>
        <optgroup label="Library">
          {library.map(({ name, revision, title }) => (
            <option key={name} value={`${name}/${revision}`}>
              {title}
            </option>
          ))}
        </optgroup>
        {own !== undefined && own.length > 0 && (
          <optgroup label="Your own">
            {own.map(({ name }) => (
              <option key={name}>{name}</option>
            ))}
          </optgroup>
        )}
      </Choice>
      <RowFault row={row} />
    </>
  );
}
