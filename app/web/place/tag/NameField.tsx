/** The name of a run, which can be written over. */
import { useState } from 'react';
import { useSession } from '../../session/context.ts';
import { takeRuns } from '../in-hand.ts';

export function NameField({ name }: { name: string }) {
  const session = useSession();
  const [draft, setDraft] = useState<string | null>(null);
  const rename = () => {
    const wanted = draft?.trim() ?? '';
    setDraft(null);
    if (wanted === '' || wanted === name) return;
    session.edit({ kind: 'rename-run', run: name, name: wanted });
    if (session.bench.get().editFaults.length === 0) takeRuns(session, [wanted.normalize('NFC')]);
  };
  return (
    <input
      className="name-field"
      aria-label="Name of the run"
      value={draft ?? name}
      maxLength={40}
      spellCheck={false}
      onChange={(event) => setDraft(event.target.value)}
      onBlur={rename}
      onKeyDown={(event) => {
        if (event.key === 'Enter') event.currentTarget.blur();
        if (event.key === 'Escape') setDraft(null);
      }}
    />
  );
}
