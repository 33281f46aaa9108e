/** The source of the selected clip's pattern: to read, and to write where it is the piece's own. */
import { CodePane } from '../code/CodePane.tsx';
import { patternLanguage } from '../code/glsl.ts';
import { clipAt } from '../session/clip-at.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import { OwnSource } from './OwnSource.tsx';
import { makeOwn } from './own-pattern.ts';
import { patternOf } from './pattern-of.ts';

export function PatternPane({ onClose }: { onClose: () => void }) {
  const session = useSession();
  const piece = usePart(session.bench, (bench) => bench.open?.piece);
  const selected = useStore(session.selected);
  const library = useStore(session.loft.library);
  const clip = piece === undefined || selected === null ? undefined : clipAt(piece, selected);
  if (piece === undefined || selected === null || clip === undefined) return null;
  const pattern = patternOf(clip, piece, library);
  if (pattern === null) return null;
  return (
    <section className="pattern-pane" aria-label={`Source of ${pattern.title}`}>
      <header>
        <h2>{pattern.title}</h2>
        <p className="whisper">
          {pattern.own
            ? 'your own pattern; Ctrl+M lets the Tab key out of the text'
            : 'from the library, read only'}
        </p>
        {!pattern.own && (
          <button type="button" onClick={() => session.edit(makeOwn(piece, selected, pattern))}>
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
        <CodePane label={`Source of ${pattern.title}`} language={patternLanguage} text={pattern.source} />
      )}
    </section>
  );
}
