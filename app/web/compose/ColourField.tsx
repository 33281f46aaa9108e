/** A colour: picked at once, or turned by lightness, richness and hue. */
import { useId, useState } from 'react';
import { hexOf, richest, type Turned, turnedOf } from './colour.ts';
import { Dial } from './Dial.tsx';

interface Props {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly onRest: () => void;
}

export function ColourField({ label, value, onChange, onRest }: Props) {
  const id = useId();
  const [open, setOpen] = useState(false);
  return (
    <>
      <div className="row">
        <label htmlFor={id}>{label}</label>
        <span className="swatch-field">
          <input
            id={id}
            type="color"
            value={value.toLowerCase()}
            onChange={(event) => onChange(event.target.value)}
            onBlur={onRest}
          />
          <button
            type="button"
            className="quiet small"
            aria-expanded={open}
            aria-label={`${label}: turn by lightness, richness and hue`}
            onClick={() => setOpen(!open)}
          >
            {open ? 'done' : 'turn'}
          </button>
        </span>
        <output htmlFor={id}>{value.toLowerCase()}</output>
      </div>
      {open && <Turning value={value} onChange={onChange} onRest={onRest} />}
    </>
  );
}

/** What is turned stays as the hand left it, also where the colour that comes of it is clamped. */
function Turning({ value, onChange, onRest }: Omit<Props, 'label'>) {
  const [turned, setTurned] = useState<Turned>(() => turnedOf(value));
  const [made, setMade] = useState(value);
  if (made !== value) {
    setMade(value);
    setTurned(turnedOf(value, turned.hue));
  }
  const turn = (change: Partial<Turned>) => {
    const next = { ...turned, ...change };
    const hex = hexOf(next);
    setTurned(next);
    setMade(hex);
    onChange(hex);
  };
  return (
    <div className="turning">
      <Dial
        label="Lightness"
        min={0}
        max={1}
        step={0.005}
        value={turned.lightness}
        text={`${Math.round(turned.lightness * 100)} %`}
        onChange={(lightness) => turn({ lightness })}
        onRest={onRest}
      />
      <Dial
        label="Richness"
        min={0}
        max={richest}
        step={0.002}
        value={turned.richness}
        text={`${Math.round((turned.richness / richest) * 100)} %`}
        onChange={(richness) => turn({ richness })}
        onRest={onRest}
      />
      <Dial
        label="Hue"
        min={0}
        max={360}
        step={1}
        value={turned.hue}
        text={`${Math.round(turned.hue)}°`}
        onChange={(hue) => turn({ hue })}
        onRest={onRest}
      />
    </div>
  );
}
