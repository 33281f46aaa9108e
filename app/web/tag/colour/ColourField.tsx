/** A colour: by its hex code, or turned by lightness, chroma and hue. */
import { lazy, type ReactNode, Suspense, useId, useState } from 'react';
import { BackButton } from '../Dial.tsx';
import { readHex } from './mix.ts';

/** Seen only once somebody turns a colour. */
const Turning = lazy(() => import('./Turning.tsx').then(({ Turning }) => ({ default: Turning })));

interface Props {
  readonly label: string;
  readonly value: string;
  /** What it is where nobody has chosen one. */
  readonly usual?: string;
  readonly onChange: (value: string) => void;
  readonly onRest: () => void;
  readonly onReset?: () => void;
  readonly aside?: ReactNode;
}

export function ColourField({ label, value, usual, onChange, onRest, onReset, aside }: Props) {
  const id = useId();
  const [open, setOpen] = useState(false);
  const hex = value.toLowerCase();
  const isTurned = usual !== undefined && hex !== usual.toLowerCase() && onReset !== undefined;
  return (
    <div className="colour">
      <div className="dial-head">
        <label htmlFor={id}>{label}</label>
        {isTurned && <BackButton label={label} usual={usual} onReset={onReset} />}
        <HexEntry id={id} value={hex} onChange={onChange} onRest={onRest} />
        <button
          type="button"
          className="colour-chip"
          style={{ background: hex }}
          aria-expanded={open}
          aria-label={`${label}: lightness, chroma, hue`}
          title="Lightness, chroma, hue"
          onClick={() => setOpen(!open)}
        />
        {aside}
      </div>
      {open && (
        <Suspense>
          <Turning value={hex} onChange={onChange} onRest={onRest} />
        </Suspense>
      )}
    </div>
  );
}

interface HexProps extends Pick<Props, 'value' | 'onChange' | 'onRest'> {
  readonly id: string;
}

/** Six digits are shown as soon as they are there; fewer wait for more. */
function HexEntry({ id, value, onChange, onRest }: HexProps) {
  const [typed, setTyped] = useState<string | null>(null);
  const [wrong, setWrong] = useState(false);
  const read = () => {
    if (typed === null) return;
    const hex = readHex(typed);
    setWrong(hex === undefined);
    if (hex === undefined) return;
    setTyped(null);
    if (hex !== value) onChange(hex);
  };
  return (
    <span className="entry">
      <input
        id={id}
        type="text"
        className="hex"
        autoComplete="off"
        spellCheck={false}
        aria-invalid={wrong}
        aria-describedby={wrong ? `${id}-told` : undefined}
        value={typed ?? value}
        onFocus={(event) => event.target.select()}
        onChange={(event) => {
          const hex = /^\s*#[0-9a-f]{6}\s*$/i.test(event.target.value) && readHex(event.target.value);
          setTyped(hex ? null : event.target.value);
          if (hex) setWrong(false);
          if (hex && hex !== value) onChange(hex);
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter') read();
          if (event.key !== 'Escape') return;
          setTyped(null);
          setWrong(false);
        }}
        onBlur={() => {
          read();
          onRest();
        }}
      />
      {wrong && (
        <span id={`${id}-told`} className="told" role="alert">
          Six digits, like #ffae42; it is still {value}.
        </span>
      )}
    </span>
  );
}
