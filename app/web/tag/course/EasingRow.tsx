/** How the way from one key to the next begins and ends: by the names of CSS, or its four numbers. */
import { useId, useState } from 'react';
import { type Easing, type EasingName, easingNames } from '../../../../engine/look/easing.ts';
import { easingIcon } from './easing-icon.ts';
import { easingText, readEasing } from './handles.ts';

interface Props {
  readonly easing: Easing;
  readonly onChange: (easing: Easing) => void;
}

const says: Readonly<Record<EasingName, string>> = {
  linear: 'goes evenly',
  ease: 'sets off soon, arrives softly',
  'ease-in': 'sets off softly',
  'ease-out': 'arrives softly',
  'ease-in-out': 'sets off and arrives softly',
  'step-start': 'jumps at once, then waits',
  'step-end': 'waits, then jumps',
};

export function EasingRow({ easing, onChange }: Props) {
  const id = useId();
  const sentence = typeof easing === 'string' ? says[easing] : 'goes as its two handles draw it';
  return (
    <fieldset className="easing">
      <legend>From this key to the next it {sentence}.</legend>
      <div className="easings">
        {easingNames.map((name) => (
          <label key={name} title={`${name}: ${says[name]}`}>
            <input
              type="radio"
              name={id}
              checked={easing === name}
              aria-label={name}
              onChange={() => onChange(name)}
            />
            <svg viewBox="0 0 32 32" aria-hidden="true">
              <path d={easingIcon(name, 32)} />
            </svg>
          </label>
        ))}
      </div>
      <EasingText key={easingText(easing)} easing={easing} onChange={onChange} />
    </fieldset>
  );
}

function EasingText({ easing, onChange }: Props) {
  const id = useId();
  const [text, setText] = useState(easingText(easing));
  const [wrong, setWrong] = useState(false);
  const read = () => {
    const found = readEasing(text);
    setWrong(found === undefined);
    if (found !== undefined && easingText(found) !== easingText(easing)) onChange(found);
  };
  return (
    <div className="easing-text">
      <input
        type="text"
        spellCheck={false}
        autoComplete="off"
        aria-label="Easing as CSS writes it"
        aria-invalid={wrong}
        aria-describedby={wrong ? id : undefined}
        value={text}
        onChange={(event) => setText(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') read();
          if (event.key === 'Escape') {
            setText(easingText(easing));
            setWrong(false);
          }
        }}
        onBlur={read}
      />
      {wrong && (
        <p id={id} className="told" role="alert">
          A name of CSS, like ease-in, or cubic-bezier(x1, y1, x2, y2) with x from 0 to 1 and y from -4 to 4.
        </p>
      )}
    </div>
  );
}
