/** A file that could not be opened: everything that is wrong with it, while the open piece stays. */
import { useEffect, useRef } from 'react';
import { useSession } from '../session/context.ts';
import { usePart } from '../session/store.ts';
import { Findings } from './Findings.tsx';

export function Refusal() {
  const session = useSession();
  const refusal = usePart(session.bench, (bench) => bench.refusal);
  const name = usePart(session.bench, (bench) => bench.open?.piece.name);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (refusal === null) dialog.current?.close();
    else if (dialog.current?.open === false) dialog.current.showModal();
  }, [refusal]);
  return (
    <dialog ref={dialog} aria-labelledby="refusal" onClose={() => session.dismissRefusal()}>
      {refusal !== null && (
        <>
          <h2 id="refusal">{refusal.fileName} cannot be opened yet</h2>
          <p>{name === undefined ? 'Mend it and open it again.' : `${name} stays on the bench.`}</p>
          <Findings diagnostics={refusal.diagnostics} />
          <form method="dialog">
            <button type="submit">Back to the bench</button>
          </form>
        </>
      )}
    </dialog>
  );
}
