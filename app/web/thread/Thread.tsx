/** All looks, hung as swatches on one thread: the order in which the button steps along them. */
import { lazy, Suspense, useEffect, useMemo, useRef, useState } from 'react';
import { freeName } from '../../../engine/edit/offers/free-name.ts';
import { removeLook } from '../../../engine/edit/offers/remove.ts';
import { namesOf } from '../../../engine/edit/references.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';
import { usePart } from '../session/store.ts';
import { Fault } from '../shell/Fault.tsx';
import { useAttempt } from '../shell/use-attempt.ts';
import { useRoving } from '../shell/use-roving.ts';
import type { PieceView } from '../worker/protocol.ts';
import { addLook } from './add-look.ts';
import { Bead } from './Bead.tsx';
import { goTo, goToWhenTaken } from './go-to.ts';
import { Jumps } from './Jumps.tsx';
import { leadsOf } from './leads.ts';
import { useBeadDrag } from './use-bead-drag.ts';

const LookCard = lazy(() => import('./LookCard.tsx').then(({ LookCard }) => ({ default: LookCard })));

export function Thread() {
  const session = useSession();
  const open = usePart(session.bench, (bench) => bench.open);
  if (open === null) return <nav className="thread" aria-label="Looks" />;
  return <ThreadOf piece={open.piece} view={open.view} />;
}

/** What is open beside the beads, by the look's name. */
type Opened = { readonly what: 'card' | 'name'; readonly look: string } | null;

function ThreadOf({ piece, view }: { piece: Piece; view: PieceView }) {
  const session = useSession();
  const at = usePart(session.playing, (playing) => playing.look);
  const { fault, attempt, tell } = useAttempt();
  const [opened, setOpened] = useState<Opened>(null);
  const [anchor, setAnchor] = useState<HTMLElement | null>(null);
  const focusNext = useRef<string | null>(null);
  // Only another number of pixels is another cloth: an edit weaves over the one that hangs there.
  const pixels = view.hidden.length;
  const columns = useMemo(() => Uint16Array.from({ length: pixels }, (_, pixel) => pixel), [pixels]);
  const leads = useMemo(() => leadsOf(piece), [piece]);
  const names = piece.looks.map(({ name }) => name);
  const current = names[at];
  const roving = useRoving<HTMLElement>(names, current);

  const reorder = (from: number, to: number) => {
    const name = names[from];
    if (name === undefined || to < 0 || to >= names.length || to === from) return;
    if (!attempt({ kind: 'reorder-look', look: name, to })) return;
    focusNext.current = name;
    session.announcement.set(`${name} is look ${to + 1} of ${names.length}.`);
  };
  const drag = useBeadDrag(roving.row, reorder);
  const rename = (look: string, wanted: string) => {
    const name = wanted.trim();
    setOpened(null);
    focusNext.current = look;
    if (name === look || name === '') return;
    if (attempt({ kind: 'rename-look', look, name })) focusNext.current = name;
  };
  const add = () => {
    const name = addLook(session, piece, attempt);
    if (name !== null) focusNext.current = name;
  };
  const copy = (look: string) => {
    const name = freeName(look, namesOf(piece, 'look'));
    if (!attempt({ kind: 'duplicate-look', look, name })) return;
    setOpened(null);
    goToWhenTaken(session, name);
    focusNext.current = name;
    session.announcement.set(`${name} is a copy of ${look}.`);
  };
  const remove = (look: string) => {
    const index = names.indexOf(look);
    const neighbour = names[index + 1] ?? names[index - 1];
    if (neighbour === undefined || !attempt(removeLook(piece, look))) return;
    setOpened(null);
    if (look === current) goToWhenTaken(session, neighbour);
    focusNext.current = neighbour;
    session.announcement.set(`${look} is removed. Undo brings it back.`);
  };

  // What was renamed or has another place is another element, or has lost the focus on its way.
  useEffect(() => {
    const name = focusNext.current;
    if (name === null || opened !== null) return;
    const bead = roving.row.current?.querySelector<HTMLElement>(`[data-rove="${CSS.escape(name)}"]`);
    if (bead == null) return;
    focusNext.current = null;
    bead.focus();
    bead.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  });

  // The look that plays is in view on a thread that is longer than the page is wide.
  useEffect(() => {
    if (current === undefined) return;
    const bead = roving.row.current?.querySelector<HTMLElement>(`[data-rove="${CSS.escape(current)}"]`);
    bead?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [current, roving.row]);

  const cardLook = opened?.what === 'card' ? piece.looks.find(({ name }) => name === opened.look) : undefined;
  return (
    <nav className="thread" aria-label="Looks" ref={roving.row}>
      <ol>
        <Jumps jumps={leads.jumps} count={names.length} />
        {piece.looks.map((look, index) => (
          <Bead
            key={look.name}
            look={look}
            index={index}
            count={names.length}
            isCurrent={index === at}
            isHome={roving.home === look.name}
            columns={columns}
            leads={leads}
            renaming={opened?.what === 'name' && opened.look === look.name}
            offset={drag.offset(index)}
            drawn={drag.drawn === index}
            roving={roving.item(look.name)}
            drawing={drag.handlers(index)}
            onGo={() => goTo(session, index)}
            onMove={(to) => reorder(index, to)}
            onRename={() => setOpened({ what: 'name', look: look.name })}
            onName={(name) => rename(look.name, name)}
            onRemove={() => remove(look.name)}
            onCard={(button) => {
              tell(null);
              setAnchor(button);
              setOpened({ what: 'card', look: look.name });
            }}
          />
        ))}
        <li className="new-bead">
          <button type="button" className="quiet" onClick={add}>
            New look
          </button>
          {current !== undefined && (
            <button type="button" className="quiet" onClick={() => copy(current)}>
              Copy this one
            </button>
          )}
        </li>
      </ol>
      <div className="tail">
        {leads.tail.map((words) => (
          <p key={words}>{words}</p>
        ))}
        {opened?.what !== 'card' && <Fault fault={fault} />}
      </div>
      {cardLook !== undefined && (
        <Suspense>
          <LookCard
            piece={piece}
            look={cardLook}
            anchor={anchor}
            fault={fault}
            attempt={attempt}
            onMove={(to) => reorder(names.indexOf(cardLook.name), to)}
            onRename={() => setOpened({ what: 'name', look: cardLook.name })}
            onCopy={() => copy(cardLook.name)}
            onRemove={() => remove(cardLook.name)}
            onClose={() => setOpened((now) => (now?.what === 'card' ? null : now))}
          />
        </Suspense>
      )}
    </nav>
  );
}
