/** Leads from a warning to where it can be mended. */
import type { Diagnostic } from '../../../engine/diagnostic.ts';
import { useSession } from '../session/context.ts';
import type { Session } from '../session/session.ts';
import { type MendingPlace, mendingPlace, mendWords } from './mend.ts';

interface Props {
  readonly warning: Pick<Diagnostic, 'code' | 'path'>;
  /** The panel with the warning closes. */
  readonly onLeave: () => void;
}

export function MendButton({ warning, onLeave }: Props) {
  const session = useSession();
  const place = mendingPlace(warning);
  if (place === null) return null;
  const go = () => {
    onLeave();
    goTo(session, place);
  };
  return (
    <button type="button" className="quiet small" onClick={go}>
      {mendWords[place.kind]}
    </button>
  );
}

function goTo(session: Session, place: MendingPlace): void {
  const { desk, selected } = session;
  switch (place.kind) {
    case 'supply':
      desk.supplyOpen.set(true);
      return;
    case 'bench':
      desk.bench.set(place.bench);
      return;
    case 'look':
      desk.bench.set('compose');
      session.put({ look: place.look, blackout: false });
      if (place.clip !== null) selected.set(place.clip);
  }
}
