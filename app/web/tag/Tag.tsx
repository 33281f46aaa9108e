/** The tag tied to the clip in hand: what it plays, and everything that can be turned on it. */
import { useMemo } from 'react';
import { patternOf } from '../compose/pattern-of.ts';
import { clipAt } from '../session/clip-at.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import type { ClipPosition } from '../worker/protocol.ts';
import { ClipContext, useClipPart, useHandOf } from './clip-in-hand.ts';
import { Draws } from './Draws.tsx';
import { LayingRows } from './LayingRows.tsx';
import { MoreRows } from './MoreRows.tsx';
import { time } from './measures.ts';
import { ParameterRow } from './ParameterRow.tsx';
import { readsSeed } from './seed.ts';
import { ZoneRow } from './ZoneRow.tsx';

interface Props {
  readonly sourceOpen: boolean;
  readonly onSource: () => void;
}

export function Tag(props: Props) {
  const session = useSession();
  const selected = useStore(session.selected);
  const isThere = usePart(
    session.bench,
    ({ open }) => open !== null && selected !== null && clipAt(open.piece, selected) !== undefined,
  );
  if (selected === null || !isThere) {
    return (
      <aside className="tag" aria-label="Clip">
        <p className="whisper">No clip is in hand. Take one from the loom, or lay a new one on it.</p>
      </aside>
    );
  }
  const { look, track, clip } = selected;
  return <TagOfClip key={`${look}.${track}.${clip}`} at={selected} {...props} />;
}

function TagOfClip({ at, ...props }: Props & { at: ClipPosition }) {
  const hand = useHandOf(at);
  return (
    <ClipContext value={hand}>
      <ClipTag {...props} />
    </ClipContext>
  );
}

function ClipTag({ sourceOpen, onSource }: Props) {
  const pattern = usePattern();
  if (pattern === null) return <aside className="tag" aria-label="Clip" />;
  return (
    <aside className="tag" aria-label={`Clip: ${pattern.title}`}>
      <header>
        <h2>{pattern.title}</h2>
        <When />
        {pattern.sees !== '' && <p className="sees">{pattern.sees}</p>}
      </header>
      <div className="rows parameters">
        {pattern.parameters.map((parameter) => (
          <ParameterRow key={parameter.name} parameter={parameter} />
        ))}
      </div>
      <div className="rows laying">
        <ZoneRow />
        <LayingRows />
      </div>
      <MoreRows chance={readsSeed(pattern.source)} />
      <Draws />
      <button type="button" className="quiet wide" aria-expanded={sourceOpen} onClick={onSource}>
        {sourceOpen ? 'Close the source' : 'Show the source'}
      </button>
    </aside>
  );
}

function usePattern() {
  const session = useSession();
  const library = useStore(session.loft.library);
  const name = useClipPart((clip) => clip.pattern);
  const own = usePart(session.bench, ({ open }) => open?.piece.patterns);
  return useMemo(() => patternOf({ pattern: name }, { patterns: own ?? [] }, library), [name, own, library]);
}

function When() {
  const words = useClipPart(({ startMilliseconds, lengthMilliseconds, endless, zone }) => {
    const start = time.text(startMilliseconds);
    const end = endless ? 'on, endless' : `to ${time.text(startMilliseconds + lengthMilliseconds)}`;
    return `on ${zone}, from ${start} ${end}`;
  });
  return <p className="whisper">{words}</p>;
}
