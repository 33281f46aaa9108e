/** A pattern of the piece's own, being written: what is typed plays as soon as it has no errors. */
import { useEffect, useRef, useState } from 'react';
import { type Diagnostic, hasErrors } from '../../../engine/diagnostic.ts';
import { same } from '../../../engine/edit/same.ts';
import { CodePane } from '../code/CodePane.tsx';
import { patternLanguage } from '../code/glsl.ts';
import { useSession } from '../session/context.ts';
import { usePart } from '../session/store.ts';
import { Findings } from '../shell/Findings.tsx';
import { type Draft, rewrite, sameDraft } from './own-pattern.ts';
import { PatternSettings } from './PatternSettings.tsx';
import type { KnownPattern } from './pattern-of.ts';
import { describeUniform } from './uniform-dial.ts';

/** After a pause in typing as long as this the text is read. */
const pauseMilliseconds = 200;

export function OwnSource({ name, pattern }: { name: string; pattern: KnownPattern }) {
  const session = useSession();
  const editFaults = usePart(session.bench, (bench) => bench.editFaults);
  const { source, parameters } = pattern;
  const [draft, setDraft] = useState<Draft>({ source, parameters });
  const [faults, setFaults] = useState<readonly Diagnostic[]>([]);
  const accepted = useRef<Draft>(draft);

  // Undo and redo bring another text; a text that was refused stays where it is being mended.
  if (!sameDraft(accepted.current, pattern)) {
    const before = accepted.current;
    accepted.current = { source, parameters };
    // Only what has changed: setting a range must not take away a line that is still being written.
    if (editFaults.length === 0)
      setDraft({
        source: source === before.source ? draft.source : source,
        parameters: same(parameters, before.parameters) ? draft.parameters : parameters,
      });
  }

  useEffect(() => {
    let gone = false;
    const timer = setTimeout(async () => {
      const found = await session.loft.proofread(draft.source, draft.parameters);
      if (gone) return;
      setFaults(found);
      const known = accepted.current;
      if (hasErrors(found) || sameDraft(draft, known)) return;
      accepted.current = draft;
      session.edit(rewrite(name, known, draft), 'drag');
    }, pauseMilliseconds);
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [session, draft, name]);

  const undescribed = faults.flatMap(({ code, span }) =>
    code === 'uniform-without-description' && span !== undefined
      ? (describeUniform(draft.source, span.start) ?? [])
      : [],
  );
  const all = [...faults, ...editFaults];
  return (
    <>
      <CodePane
        label={`Source of ${name}`}
        language={patternLanguage}
        text={draft.source}
        onChange={(text) => setDraft({ ...draft, source: text })}
        faults={faults}
      />
      <PatternSettings pattern={name} parameters={parameters} />
      <div className="proof">
        <div role="status">
          {all.length === 0 ? (
            <p className="whisper">No faults; it plays.</p>
          ) : (
            <Findings diagnostics={all} />
          )}
        </div>
        {undescribed.map((description) => (
          <button
            type="button"
            key={description.name}
            onClick={() => setDraft({ ...draft, parameters: [...draft.parameters, description] })}
          >
            Give {description.name} a dial
          </button>
        ))}
      </div>
    </>
  );
}
