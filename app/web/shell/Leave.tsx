/** Work that is in no file is not let go of unasked. */
import { useEffect, useRef } from 'react';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';

export function Leave() {
  const session = useSession();
  const answer = useStore(session.leaving.question);
  const name = usePart(session.bench, (bench) => bench.open?.piece.name);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    if (answer === null) dialog.current?.close();
    else if (dialog.current?.open === false) dialog.current.showModal();
  }, [answer]);
  return (
    <dialog ref={dialog} className="leave" aria-labelledby="leave" onClose={() => answer?.('stay')}>
      {answer !== null && (
        <>
          <h2 id="leave">{name} is in no file yet</h2>
          <p>Another piece takes its place on the bench. Save it first?</p>
          <div className="leave-answers">
            <button type="button" onClick={() => answer('save')}>
              Save and go on
            </button>
            <button type="button" className="quiet" onClick={() => answer('let-go')}>
              Let it go
            </button>
            <button type="button" className="quiet" onClick={() => answer('stay')}>
              Stay with it
            </button>
          </div>
        </>
      )}
    </dialog>
  );
}
