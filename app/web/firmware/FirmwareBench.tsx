/** The bench where the piece becomes a sketch: to read, to copy, to take away. */
import { useState } from 'react';
import { type ChipName, chipNames, chips } from '../../../engine/parts/chips.ts';
import { CodePane } from '../code/CodePane.tsx';
import { useSession } from '../session/context.ts';
import { handOver } from '../session/files.ts';
import { usePart, useStore } from '../session/store.ts';
import { Findings } from '../shell/Findings.tsx';

export function FirmwareBench() {
  const session = useSession();
  const { sketch, diagnostics, board, stale } = useStore(session.loft.sketch);
  const playable = usePart(session.bench, (bench) => bench.open !== null);
  if (!playable) return <section className="firmware" aria-label="Firmware" />;
  return (
    <section className="firmware" aria-label="Firmware">
      <header>
        <h2>The sketch</h2>
        <BoardChoice board={board} />
        <span className="whisper file-name">{sketch === null ? '' : sketch.fileName}</span>
        {sketch !== null && <TakeAway fileName={sketch.fileName} text={sketch.text} stale={stale} />}
      </header>
      {sketch !== null && <CodePane label="The generated sketch" language="cpp" text={sketch.text} />}
      {sketch === null && diagnostics.length === 0 && <p className="whisper">Writing the sketch…</p>}
      {diagnostics.length > 0 && <Findings diagnostics={diagnostics} />}
      <p className="whisper">
        Read the cautions at its head before anybody wears the piece. Nothing below the line that says so
        needs a hand.
      </p>
    </section>
  );
}

function BoardChoice({ board }: { board: ChipName | null }) {
  const session = useSession();
  return (
    <select
      aria-label="Board"
      value={board ?? ''}
      onChange={(event) => {
        const chosen = chipNames.find((name) => name === event.target.value);
        if (chosen !== undefined) session.loft.setBoard(chosen);
      }}
    >
      {chipNames
        .filter((name) => chips[name].ready || name === board)
        .map((name) => (
          <option key={name} value={name}>
            {chips[name].title}
          </option>
        ))}
    </select>
  );
}

function TakeAway({ fileName, text, stale }: { fileName: string; text: string; stale: boolean }) {
  const session = useSession();
  const [copied, setCopied] = useState<'yes' | 'no' | null>(null);
  const copy = async () => {
    const done = await navigator.clipboard.writeText(text).then(
      () => true,
      () => false,
    );
    setCopied(done ? 'yes' : 'no');
    session.announcement.set(done ? 'The sketch is copied.' : 'The browser does not let the page copy.');
    setTimeout(() => setCopied(null), 2500);
  };
  return (
    <>
      <button type="button" disabled={stale} onClick={() => void copy()}>
        {copied === null ? 'Copy' : copied === 'yes' ? 'Copied' : 'Not copied'}
      </button>
      <button
        type="button"
        className="quiet"
        disabled={stale}
        onClick={() => handOver(fileName, text, 'text/plain')}
      >
        Download
      </button>
    </>
  );
}
