/** A swatch in the book: to be laid by a tap, or carried to where it is wanted. */
import { useState } from 'react';
import { createPortal } from 'react-dom';
import type { SwatchWeight } from '../worker/weigh.ts';
import { SwatchCloth } from './SwatchCloth.tsx';
import type { Swatch } from './swatch.ts';
import { type CarriedAt, useCarry } from './use-carry.ts';

interface Props {
  readonly swatch: Swatch;
  readonly weight: SwatchWeight | undefined;
  readonly frameMilliseconds: number;
  readonly roving: object;
  readonly isHome: boolean;
  readonly onLay: () => void;
  readonly onOwn: () => void;
}

export function SwatchCard({ swatch, weight, frameMilliseconds, roving, isHome, onLay, onOwn }: Props) {
  const [touched, setTouched] = useState(false);
  const { at, handlers } = useCarry(swatch.pattern);
  return (
    <li
      className="swatch-card"
      data-away={at !== null}
      onPointerEnter={() => setTouched(true)}
      onPointerLeave={() => setTouched(false)}
    >
      <button type="button" className="lay" onClick={onLay} {...roving} {...handlers}>
        <SwatchCloth swatch={swatch} touched={touched || at !== null} />
        <b>{swatch.title}</b>
        <span className="line">{swatch.sees}</span>
        <Figures weight={weight} frameMilliseconds={frameMilliseconds} />
      </button>
      <button
        type="button"
        className="start-own"
        tabIndex={isHome ? 0 : -1}
        aria-label={`Start a pattern of my own from ${swatch.title}`}
        title="Start a pattern of my own from this"
        onClick={onOwn}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M4 16 l1-4 8-8 3 3 -8 8z M11.500 5.500 l3 3" />
        </svg>
      </button>
      {at !== null && createPortal(<Ghost swatch={swatch} at={at} />, document.body)}
    </li>
  );
}

/** `1.1 ms  212 mA*`; what they are made of stands in the head of the book. */
function Figures({ weight, frameMilliseconds }: Pick<Props, 'weight' | 'frameMilliseconds'>) {
  if (weight === undefined) return <span className="weights">…</span>;
  const { milliamps, limited, milliseconds } = weight;
  return (
    <span className="weights">
      {milliseconds !== null && (
        <span data-heavy={milliseconds > frameMilliseconds}>{milliseconds.toFixed(1)} ms</span>
      )}
      <span>
        {milliamps.toFixed(0)} mA{limited ? '*' : ''}
      </span>
    </span>
  );
}

function Ghost({ swatch, at }: { swatch: Swatch; at: CarriedAt }) {
  return (
    <div
      className="swatch-ghost"
      aria-hidden="true"
      style={{ transform: `translate(${at.x}px, ${at.y}px) rotate(-2deg)` }}
    >
      <SwatchCloth swatch={swatch} touched />
      <b>{swatch.title}</b>
    </div>
  );
}
