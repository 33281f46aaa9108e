/** The keys of the open bench. */
import { useEffect, useRef } from 'react';
import { useSession } from '../session/context.ts';
import { useStore } from '../session/store.ts';
import { benches } from './benches.ts';
import { benchKeys, everywhere, type KeyLine } from './keys.ts';

export function KeysDialog() {
  const session = useSession();
  const bench = useStore(session.desk.bench);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const title = benches.find(({ name }) => name === bench)!.title;
  return (
    <dialog
      ref={dialog}
      className="keys"
      aria-labelledby="keys"
      onClose={() => session.desk.keysOpen.set(false)}
    >
      <h2 id="keys">Keys</h2>
      <KeyList title={`On ${title}`} lines={benchKeys[bench]} />
      <KeyList title="Everywhere" lines={everywhere} />
      <form method="dialog">
        <button type="submit">Back to the bench</button>
      </form>
    </dialog>
  );
}

function KeyList({ title, lines }: { title: string; lines: readonly KeyLine[] }) {
  return (
    <section>
      <h3>{title}</h3>
      <dl>
        {lines.map(({ keys, does }) => (
          <div key={does}>
            <dt>
              {keys.map((key) => (
                <kbd key={key}>{key}</kbd>
              ))}
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
