/** The source of the selected clip's pattern: to read, and to write where it is the piece's own. */
import { useEffect, useRef, useState } from 'react';
import { type Diagnostic, hasErrors } from '../../../engine/diagnostic.ts';
import { CodePane } from '../code/CodePane.tsx';
import { patternLanguage } from '../code/glsl.ts';
import { useSession } from '../session/context.ts';
import { clipAt, makeOwnPattern, setPatternSource } from '../session/edits.ts';
import { usePart, useStore } from '../session/store.ts';
import { Findings } from '../shell/Findings.tsx';
import { type KnownPattern, patternOf } from './pattern-of.ts';

/** After a pause in typing as long as this the text is read. */
const pauseMilliseconds = 200;

export function PatternPane({ onClose }: { onClose: () => void }) {
  const session = useSession();
  const piece = usePart(session.bench, (bench) => bench.open?.piece);
  const selected = useStore(session.selected);
  const library = useStore(session.loft.library);
  const clip = piece === undefined || selected === null ? undefined : clipAt(piece, selected);
  if (piece === undefined || selected === null || clip === undefined) return null;
  const pattern = patternOf(clip, piece, library);
  if (pattern === null) return null;
  const { source, parameters } = pattern;
  return (
    <section className="pattern-pane" aria-label={`Source of ${pattern.title}`}>
      <header>
        <h2>{pattern.title}</h2>
        <p className="whisper">{pattern.own ? 'your own pattern' : 'from the library, read only'}</p>
        {!pattern.own && (
          <button
            type="button"
            onClick={() =>
              session.edit((now) => makeOwnPattern(now, selected, { source, parameters: [...parameters] }))
            }
          >
            Make it my own
          </button>
        )}
        <button type="button" className="quiet" onClick={onClose}>
          Close
        </button>
      </header>
      {pattern.own ? (
        <OwnSource key={clip.pattern} name={clip.pattern} pattern={pattern} />
      ) : (
        <CodePane label={`Source of ${pattern.title}`} language={patternLanguage} text={source} />
      )}
    </section>
  );
}

/** What is typed plays as soon as it has no errors; until then the piece plays what it last could. */
function OwnSource({ name, pattern }: { name: string; pattern: KnownPattern }) {
  const session = useSession();
  const { source, parameters } = pattern;
  const [draft, setDraft] = useState(source);
  const [faults, setFaults] = useState<readonly Diagnostic[]>([]);
  const accepted = useRef(source);

  // An undo or redo outside of the editor brings another text.
  if (accepted.current !== source) {
    accepted.current = source;
    if (draft !== source) setDraft(source);
  }

  useEffect(() => {
    let gone = false;
    const timer = setTimeout(async () => {
      const found = await session.loft.proofread(draft, parameters);
      if (gone) return;
      setFaults(found);
      if (hasErrors(found) || draft === accepted.current) return;
      accepted.current = draft;
      session.edit((now) => setPatternSource(now, name, draft), `source ${name}`);
    }, pauseMilliseconds);
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [session, draft, parameters, name]);

  return (
    <>
      <CodePane
        label={`Source of ${name}`}
        language={patternLanguage}
        text={draft}
        onChange={setDraft}
        faults={faults}
      />
      <div className="proof" role="status">
        {faults.length === 0 ? (
          <p className="whisper">No faults; it plays.</p>
        ) : (
          <Findings diagnostics={faults} />
        )}
      </div>
    </>
  );
}
