/** The name of the house and of the piece, the way in and out, and the benches. */
import { useRef } from 'react';
import { useSession } from '../session/context.ts';
import { openFile, openSample, samples, savePiece } from '../session/files.ts';
import { usePart, useStore } from '../session/store.ts';
import { benches } from './benches.ts';

export function Header() {
  const session = useSession();
  const bench = useStore(session.desk.bench);
  const open = usePart(session.bench, (now) => now.open);
  return (
    <header className="house">
      <h1>
        weft<i>light</i>
      </h1>
      <nav className="benches" aria-label="Benches">
        {benches.map(({ name, title }) => (
          <button
            key={name}
            type="button"
            aria-current={name === bench ? 'page' : undefined}
            onClick={() => session.desk.bench.set(name)}
          >
            {title}
          </button>
        ))}
      </nav>
      <p className="piece-name">
        <b>{open?.piece.name ?? ''}</b>
        {open?.unsaved === true && <span className="whisper"> not saved</span>}
      </p>
      <FileActions />
    </header>
  );
}

/** `Undo: Set period of Millrace`, for those who see the button and those who hear it. */
function namedStep(word: string, step: string | undefined) {
  const name = step === undefined ? word : `${word}: ${step}`;
  return { 'aria-label': name, title: name, disabled: step === undefined };
}

function FileActions() {
  const session = useSession();
  const { open, next } = useStore(session.bench);
  const picker = useRef<HTMLInputElement>(null);
  return (
    <div className="actions">
      <button
        type="button"
        className="quiet icon"
        {...namedStep('Undo', next.undo)}
        onClick={() => session.undo()}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M8 4 L3 8.5 L8 13 M3 8.5 H12 a4.5 4.5 0 0 1 0 9" />
        </svg>
      </button>
      <button
        type="button"
        className="quiet icon"
        {...namedStep('Redo', next.redo)}
        onClick={() => session.redo()}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M12 4 L17 8.5 L12 13 M17 8.5 H8 a4.5 4.5 0 0 0 0 9" />
        </svg>
      </button>
      <select
        aria-label="Open a sample"
        value=""
        onChange={(event) => {
          const sample = samples.find(({ fileName }) => fileName === event.target.value);
          if (sample !== undefined) void openSample(session, sample);
        }}
      >
        <option value="" disabled hidden>
          Samples
        </option>
        {samples.map(({ fileName, title }) => (
          <option key={fileName} value={fileName}>
            {title}
          </option>
        ))}
      </select>
      <button type="button" className="quiet" onClick={() => picker.current?.click()}>
        Open
      </button>
      <input
        ref={picker}
        type="file"
        accept=".json,application/json"
        hidden
        aria-label="A piece file"
        onChange={(event) => {
          const file = event.target.files?.[0];
          // The same file may be chosen again after it has been mended.
          event.target.value = '';
          if (file !== undefined) void openFile(session, file);
        }}
      />
      <button type="button" disabled={open === null} onClick={() => savePiece(session)}>
        Save
      </button>
    </div>
  );
}
