/** A few words to type: Enter or leaving takes them, Escape leaves them as they were. */
import { useState } from 'react';

interface Props {
  readonly caption: string;
  readonly value: string;
  readonly most: number;
  readonly onChange: (text: string) => void;
  readonly onRest: () => void;
}

export function TextEntry({ caption, value, most, onChange, onRest }: Props) {
  const [typed, setTyped] = useState<string | null>(null);
  const take = () => {
    const text = typed?.trim();
    setTyped(null);
    if (text !== undefined && text !== value) onChange(text);
    onRest();
  };
  return (
    <div className="setting">
      <span>{caption}</span>
      <input
        type="text"
        aria-label={caption}
        autoComplete="off"
        maxLength={most}
        value={typed ?? value}
        onChange={(event) => setTyped(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
          if (event.key === 'Escape') setTyped(null);
        }}
        onBlur={take}
      />
    </div>
  );
}
