/** One part of a zone: a run with its first and last pixel, or something that is told in words. */
import { pixelCount } from '../../../../engine/layout/shapes.ts';
import type { Piece, ZoneSource } from '../../../../engine/piece/schema.ts';
import { runsOf } from '../surface/places.ts';
import { NumberEntry } from './NumberEntry.tsx';
import { sourceWords } from './source-words.ts';

interface Props {
  readonly piece: Piece;
  readonly part: ZoneSource;
  readonly place: number;
  /** How many parts there are. */
  readonly count: number;
  readonly onChange: (part: ZoneSource) => void;
  readonly onRest: () => void;
  readonly onMove: (to: number) => void;
  readonly onRemove: () => void;
}

export function PartRow({ piece, part, place, count, onChange, onRest, onMove, onRemove }: Props) {
  const stretch = stretchOf(piece, part);
  const words = stretch?.run ?? sourceWords(part);
  return (
    <li className="part">
      <span className="part-name">{words}</span>
      {count > 1 && (
        <span className="part-order">
          <IconButton
            label={`${words} earlier`}
            sign="↑"
            disabled={place === 0}
            onClick={() => onMove(place - 1)}
          />
          <IconButton
            label={`${words} later`}
            sign="↓"
            disabled={place === count - 1}
            onClick={() => onMove(place + 1)}
          />
          <IconButton label={`${words} out of the zone`} sign="×" disabled={false} onClick={onRemove} />
        </span>
      )}
      {stretch !== undefined && (
        <span className="part-range">
          <NumberEntry
            label="from"
            value={stretch.first}
            min={0}
            max={stretch.count - 1}
            onChange={(first) => onChange(partOf({ ...stretch, first }))}
            onRest={onRest}
          />
          <NumberEntry
            label="to"
            value={stretch.last}
            min={0}
            max={stretch.count - 1}
            onChange={(last) => onChange(partOf({ ...stretch, last }))}
            onRest={onRest}
          />
          <IconButton
            label={`${words} backwards`}
            sign="⇄"
            disabled={stretch.first === stretch.last}
            onClick={() => {
              onChange(partOf({ ...stretch, first: stretch.last, last: stretch.first }));
              onRest();
            }}
          />
        </span>
      )}
    </li>
  );
}

interface ButtonProps {
  readonly label: string;
  readonly sign: string;
  readonly disabled: boolean;
  readonly onClick: () => void;
}

function IconButton({ label, sign, disabled, onClick }: ButtonProps) {
  return (
    <button
      type="button"
      className="quiet small"
      aria-label={label}
      title={label}
      disabled={disabled}
      onClick={onClick}
    >
      {sign}
    </button>
  );
}

interface Stretch {
  readonly run: string;
  readonly first: number;
  readonly last: number;
  readonly count: number;
}

/** A run, or a range of one, as the numbers of its first and last pixel. */
function stretchOf(piece: Piece, part: ZoneSource): Stretch | undefined {
  if (part.kind !== 'run' && part.kind !== 'range') return undefined;
  const run = runsOf(piece).find(({ name }) => name === part.run);
  if (run === undefined) return undefined;
  const count = pixelCount(run.flat);
  const { first, last } = part.kind === 'range' ? part : { first: 0, last: count - 1 };
  return { run: part.run, first, last, count };
}

/** All of a run is the run itself, so that it stays all of it when the run grows. */
function partOf({ run, first, last, count }: Stretch): ZoneSource {
  return first === 0 && last === count - 1 ? { kind: 'run', run } : { kind: 'range', run, first, last };
}
