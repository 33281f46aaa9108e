/** Lightness, chroma and hue of a colour, on tracks that show what each place would give. */
import { useMemo, useState } from 'react';
import { useSession } from '../../session/context.ts';
import { Ask } from '../../shell/Ask.tsx';
import { Dial } from '../Dial.tsx';
import { type Measure, share } from '../measures.ts';
import { hexOf, isInGamut, mostChroma, mostChromaAt, type Oklch, oklchOf, trackOf } from './oklch.ts';
import { paletteOf } from './palette.ts';

interface Props {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly onRest: () => void;
}

const degrees: Measure = {
  text: (value) => `${Number(value.toFixed(1))}°`,
  read: (text) =>
    /^\s*\d+([.,]\d+)?\s*°?\s*$/.test(text) ? Number.parseFloat(text.replace(',', '.')) : undefined,
};

const plain: Measure = {
  text: (value) => value.toFixed(3),
  read: (text) => (/^\s*\d*[.,]?\d+\s*$/.test(text) ? Number(text.replace(',', '.')) : undefined),
};

const chips = 14;

/** What is asked for stays as the hand left it, also where the strip cannot show as much: a grey keeps its hue. */
export function Turning({ value, onChange, onRest }: Props) {
  const session = useSession();
  const [asked, setAsked] = useState<Oklch>(() => oklchOf(value));
  const [made, setMade] = useState(value);
  const [palette, setPalette] = useState(() => paletteNow());
  if (made !== value) {
    setMade(value);
    setAsked(oklchOf(value, asked.hue));
  }
  function paletteNow(): string[] {
    const piece = session.bench.get().open?.piece;
    return piece === undefined ? [] : paletteOf(piece, chips);
  }
  const turn = (change: Partial<Oklch>) => {
    const next = { ...asked, ...change };
    const hex = hexOf(next);
    setAsked(next);
    setMade(hex);
    onChange(hex);
  };
  const rest = () => {
    onRest();
    setPalette(paletteNow());
  };
  const tracks = useMemo(
    () => ({
      lightness: trackOf(asked, 'lightness', 1),
      chroma: trackOf(asked, 'chroma', mostChroma),
      hue: trackOf({ ...asked, chroma: Math.max(asked.chroma, faint) }, 'hue', 360),
    }),
    [asked],
  );
  return (
    <div className="turning">
      <Dial
        label="Lightness"
        min={0}
        max={1}
        step={0.005}
        value={asked.lightness}
        measure={share}
        track={tracks.lightness}
        onChange={(lightness) => turn({ lightness })}
        onRest={rest}
      />
      <Dial
        label="Chroma"
        min={0}
        max={mostChroma}
        step={0.002}
        value={asked.chroma}
        measure={plain}
        track={tracks.chroma}
        limit={mostChromaAt(asked.lightness, asked.hue)}
        aside={<Ask about="chroma">How vivid a colour is: none is grey.</Ask>}
        onChange={(chroma) => turn({ chroma })}
        onRest={rest}
      />
      {!isInGamut(asked) && (
        <p className="says" role="status">
          The strip cannot be more vivid here.
        </p>
      )}
      <Dial
        label="Hue"
        min={0}
        max={360}
        step={1}
        value={asked.hue}
        measure={degrees}
        track={tracks.hue}
        onChange={(hue) => turn({ hue })}
        onRest={rest}
      />
      <fieldset className="palette" aria-label="Colours of this piece">
        {palette.map((colour) => (
          <button
            key={colour}
            type="button"
            className="palette-chip"
            style={{ background: colour }}
            aria-label={`Take ${colour}`}
            title={colour}
            onClick={() => {
              onChange(colour);
              onRest();
            }}
          />
        ))}
        <Eyedropper
          onPick={(colour) => {
            onChange(colour);
            onRest();
          }}
        />
      </fieldset>
    </div>
  );
}

/** Enough to tell one hue from another on the track of a grey. */
const faint = 0.06;

/** As far as browsers have it (WICG EyeDropper API). */
interface EyeDropperWindow {
  readonly EyeDropper?: new () => { open(): Promise<{ sRGBHex: string }> };
}

function Eyedropper({ onPick }: { onPick: (colour: string) => void }) {
  const { EyeDropper } = window as EyeDropperWindow;
  if (EyeDropper === undefined) return null;
  // Who leaves it with Escape picks nothing.
  const pick = () =>
    new EyeDropper().open().then(
      ({ sRGBHex }) => onPick(sRGBHex.toLowerCase()),
      () => {},
    );
  return (
    <button type="button" className="quiet small" onClick={pick}>
      From the screen
    </button>
  );
}
