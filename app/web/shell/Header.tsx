/** The name of the house and of the piece, the way in and out, and the benches. */
import { type ReactNode, useRef } from 'react';
import { useSession } from '../session/context.ts';
import { openFile, savePiece } from '../session/files.ts';
import { usePart, useStore } from '../session/store.ts';
import { benches } from './benches.ts';

export function Header() {
  const session = useSession();
  const bench = useStore(session.desk.bench);
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
      <PieceName />
      <div className="actions">
        <Steps />
        <Files />
        <button
          type="button"
          className="quiet icon help"
          aria-label="Keys"
          title="Keys of this bench (?)"
          onClick={() => session.desk.keysOpen.set(true)}
        >
          <svg viewBox="0 0 20 20" aria-hidden="true">
            <path d="M3 6 H17 V14.500 H3 Z M6 9 H6.100 M10 9 H10.100 M14 9 H14.100 M7 12 H13" />
          </svg>
        </button>
      </div>
    </header>
  );
}

function PieceName() {
  const session = useSession();
  const { open, origin } = useStore(session.bench);
  const keptFrom = useStore(session.keptFrom);
  const notes = [
    ...(open?.unsaved === true ? ['not saved'] : []),
    ...(origin === 'kept' && keptFrom !== null ? [`taken up again from ${keptFrom}`] : []),
  ];
  return (
    <p className="piece-name">
      <b>{open?.piece.name ?? ''}</b>
      {notes.length > 0 && <span className="whisper"> {notes.join(', ')}</span>}
    </p>
  );
}

function Steps() {
  const session = useSession();
  const next = usePart(session.bench, (bench) => bench.next);
  return (
    <>
      <StepButton word="Undo" step={next.undo} onPress={() => session.undo()}>
        <path d="M8 4 L3 8.5 L8 13 M3 8.5 H12 a4.5 4.5 0 0 1 0 9" />
      </StepButton>
      <StepButton word="Redo" step={next.redo} onPress={() => session.redo()}>
        <path d="M12 4 L17 8.5 L12 13 M17 8.5 H8 a4.5 4.5 0 0 0 0 9" />
      </StepButton>
    </>
  );
}

interface StepButtonProps {
  readonly word: string;
  readonly step: string | undefined;
  readonly onPress: () => void;
  readonly children: ReactNode;
}

/** Named `Undo: Set period of Millrace`, for those who see it and those who hear it. */
function StepButton({ word, step, onPress, children }: StepButtonProps) {
  const name = step === undefined ? word : `${word}: ${step}`;
  return (
    <button
      type="button"
      className="quiet icon"
      aria-label={name}
      title={name}
      disabled={step === undefined}
      onClick={onPress}
    >
      <svg viewBox="0 0 20 20" aria-hidden="true">
        {children}
      </svg>
    </button>
  );
}

function Files() {
  const session = useSession();
  const hasPiece = usePart(session.bench, ({ open }) => open !== null);
  const picker = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className="quiet" onClick={() => session.desk.starting.set(true)}>
        New piece
      </button>
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
      <button type="button" disabled={!hasPiece} onClick={() => savePiece(session)}>
        Save
      </button>
    </>
  );
}
