/** A look on the thread: its cloth hung from a knot, with what leads to it and on from it. */
import { type KeyboardEvent, useEffect, useRef } from 'react';
import type { Look } from '../../../engine/piece/schema.ts';
import { ClothCanvas } from '../cloth/ClothCanvas.tsx';
import type { Leads } from './leads.ts';

/** Enough rows for a swatch; all looks are woven, so they had better be few. */
const swatchRows = 26;
/** What is looked at comes first: cloths of the loom before those of the thread. */
const firstPriority = 30;

interface Props {
  readonly look: Look;
  readonly index: number;
  readonly count: number;
  readonly isCurrent: boolean;
  /** The Tab key stops here, and at what belongs to this bead. */
  readonly isHome: boolean;
  readonly columns: Uint16Array;
  readonly leads: Leads;
  readonly renaming: boolean;
  /** Sideways, while one is drawn along the thread. */
  readonly offset: number;
  readonly drawn: boolean;
  readonly roving: { onKeyDown(event: KeyboardEvent): void };
  readonly drawing: object;
  readonly onGo: () => void;
  readonly onMove: (to: number) => void;
  readonly onRename: () => void;
  readonly onName: (name: string) => void;
  readonly onRemove: () => void;
  readonly onCard: (button: HTMLElement) => void;
}

/** Of the keys that move a bead along, held with Alt. */
const strides: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1 };

export function Bead(props: Props) {
  const { look, index, isCurrent, isHome, leads, renaming, offset, drawn, roving, drawing } = props;
  const more = useRef<HTMLButtonElement>(null);
  const acts: Readonly<Record<string, () => void>> = { F2: props.onRename, Delete: props.onRemove };
  const onKeyDown = (event: KeyboardEvent) => {
    const stride = event.altKey ? strides[event.key] : undefined;
    const act = stride === undefined ? acts[event.key] : () => props.onMove(index + stride);
    if (act === undefined) return roving.onKeyDown(event);
    event.preventDefault();
    act();
  };
  return (
    <li
      data-bead={index}
      data-drawn={drawn}
      data-current={isCurrent}
      style={offset === 0 ? undefined : { transform: `translateX(${offset}px)` }}
    >
      <Lead kind="into" words={leads.into[index]!.join(', ')} />
      <Lead kind="timer" words={leads.timers[index] ?? ''} />
      {index < props.count - 1 && <Lead kind="between" words={betweenWords(leads)} />}
      <button
        type="button"
        className="swatch"
        title={look.name}
        aria-current={isCurrent ? 'true' : undefined}
        aria-keyshortcuts="F2 Delete Alt+ArrowLeft Alt+ArrowRight"
        onClick={props.onGo}
        onDoubleClick={props.onRename}
        {...roving}
        {...drawing}
        onKeyDown={onKeyDown}
      >
        <span className="bead-knot" aria-hidden="true" />
        <ClothCanvas
          look={index}
          columns={props.columns}
          rows={swatchRows}
          fromMs={0}
          toMs={look.lengthMilliseconds}
          priority={firstPriority + index}
        />
        <span className="fringe" aria-hidden="true" />
        <span className="swatch-name" data-hidden={renaming}>
          {look.name}
        </span>
      </button>
      <button
        ref={more}
        type="button"
        className="bead-more"
        tabIndex={isHome ? 0 : -1}
        aria-label={`More of ${look.name}`}
        title="Length, dissolve, timer, copy, remove"
        onClick={() => props.onCard(more.current!)}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <circle cx="4" cy="10" r="1.700" />
          <circle cx="10" cy="10" r="1.700" />
          <circle cx="16" cy="10" r="1.700" />
        </svg>
      </button>
      {renaming && <NameField name={look.name} onName={props.onName} />}
    </li>
  );
}

function Lead({ words, kind }: { words: string; kind: 'into' | 'timer' | 'between' }) {
  if (words === '') return null;
  return (
    <span className="lead" data-kind={kind} title={words}>
      {words}
    </span>
  );
}

/** `‹ hold · press ›` */
function betweenWords({ onward, back }: Leads): string {
  const ways = [...back.map((words) => `‹ ${words}`), ...onward.map((words) => `${words} ›`)];
  return ways.join(' · ');
}

/** Enter and leaving it take the name, Escape leaves the old one. */
function NameField({ name, onName }: { name: string; onName: (name: string) => void }) {
  const done = useRef(false);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    field.current?.focus();
    field.current?.select();
  }, []);
  const finish = (text: string) => {
    if (done.current) return;
    done.current = true;
    onName(text);
  };
  return (
    <input
      className="bead-name"
      aria-label={`Name of ${name}`}
      defaultValue={name}
      maxLength={40}
      ref={field}
      onKeyDown={(event) => {
        if (event.key === 'Enter') finish(event.currentTarget.value);
        if (event.key === 'Escape') finish(name);
      }}
      onBlur={(event) => finish(event.currentTarget.value)}
    />
  );
}
