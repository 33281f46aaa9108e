/** All looks, hung as swatches on one thread: the order in which the button steps along them. */
import { useMemo } from 'react';
import type { Piece } from '../../../engine/piece/schema.ts';
import { ClothCanvas } from '../cloth/ClothCanvas.tsx';
import { useSession } from '../session/context.ts';
import { usePart } from '../session/store.ts';
import { duration } from '../session/words.ts';

/** Enough rows for a swatch; all looks are woven, so they had better be few. */
const swatchRows = 26;

export function Thread() {
  const session = useSession();
  const open = usePart(session.bench, (bench) => bench.open);
  const at = usePart(session.playing, (playing) => playing.look);
  const hidden = open?.view.hidden;
  const columns = useMemo(() => Uint16Array.from(hidden ?? [], (_, pixel) => pixel), [hidden]);
  if (open === null) return <nav className="thread" aria-label="Looks" />;
  return (
    <nav className="thread" aria-label="Looks">
      <ol>
        {open.piece.looks.map((look, index) => (
          <li key={look.name}>
            <button
              type="button"
              className="swatch"
              title={look.name}
              aria-current={index === at ? 'true' : undefined}
              onClick={() => session.put({ look: index, blackout: false })}
            >
              <ClothCanvas look={index} columns={columns} rows={swatchRows} priority={30 + index} />
              <span className="fringe" aria-hidden="true" />
              <span className="swatch-name">{look.name}</span>
            </button>
            {look.moveOn !== undefined && (
              <span className="moves-on">after {duration(look.moveOn.afterMilliseconds)}</span>
            )}
          </li>
        ))}
      </ol>
      <p className="back">{roundTrip(open.piece)}</p>
    </nav>
  );
}

/** What comes after the last look, if a button steps along the thread. */
function roundTrip({ looks, controls }: Piece): string {
  const steps = controls.buttons.some((button) =>
    [button.press, button.hold, button.double].some((action) => action?.do === 'next-look'),
  );
  return steps && looks.length > 1 ? `then ${looks[0]!.name} again` : '';
}
