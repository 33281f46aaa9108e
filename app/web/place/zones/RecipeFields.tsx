/** What a zone is made of: parts, how they lie to each other, every how many, and the way round. */
import { useId } from 'react';
import { limits } from '../../../../engine/piece/limits.ts';
import type { Piece, ZoneSource } from '../../../../engine/piece/schema.ts';
import { useSession } from '../../session/context.ts';
import type { Manner as EditManner } from '../../session/hand.ts';
import { useStore } from '../../session/store.ts';
import { Ask } from '../../shell/Ask.tsx';
import { useHand } from '../hand.ts';
import { runsOf } from '../surface/places.ts';
import { layoutOf, pixelsOfZone } from './layout-of.ts';
import { sourceOfAddresses } from './make.ts';
import { NumberEntry } from './NumberEntry.tsx';
import { PartRow } from './PartRow.tsx';
import { carried, type Manner, type Recipe, recipeOf, sourceOf, withParts } from './recipe.ts';

interface Props {
  readonly piece: Piece;
  readonly zone: Piece['zones'][number];
}

export function RecipeFields({ piece, zone }: Props) {
  const session = useSession();
  const recipe = recipeOf(zone.source);
  const { parts, every, offset, reversed } = recipe;
  const turned = useId();
  const set = (changed: Recipe | undefined, manner: EditManner = 'step') => {
    if (changed === undefined) return;
    session.edit({ kind: 'set-zone', zone: zone.name, set: { source: sourceOf(changed) } }, manner);
  };
  const setParts = (changed: readonly ZoneSource[], manner?: EditManner) =>
    set(withParts(recipe, changed), manner);
  const rest = () => session.endDrag();

  return (
    <div className="recipe">
      <ol className="parts" aria-label="Parts, in order">
        {parts.map((part, i) => (
          <PartRow
            // biome-ignore lint/suspicious/noArrayIndexKey: the same part may come twice while one is being changed.
            key={i}
            piece={piece}
            part={part}
            place={i}
            count={parts.length}
            onChange={(changed) =>
              setParts(
                parts.map((old, at) => (at === i ? changed : old)),
                'drag',
              )
            }
            onRest={rest}
            onMove={(to) => setParts(carried(parts, i, to))}
            onRemove={() => setParts(parts.filter((_, at) => at !== i))}
          />
        ))}
      </ol>
      <AddPart piece={piece} zone={zone.name} onAdd={(part) => setParts([...parts, part])} />
      {parts.length > 1 && (
        <MannerChoice value={recipe.manner} onChange={(manner) => set({ ...recipe, manner })} />
      )}
      <div className="every">
        <NumberEntry
          label="Every"
          value={every}
          min={1}
          max={limits.pixels}
          onChange={(value) => set({ ...recipe, every: value, offset: Math.min(offset, value - 1) }, 'drag')}
          onRest={rest}
        />
        <NumberEntry
          label="from"
          value={offset}
          min={0}
          max={limits.pixels}
          onChange={(value) => set({ ...recipe, offset: value }, 'drag')}
          onRest={rest}
        />
        <Ask about="every and from">
          2 takes every second pixel, 3 every third. “From” is the pixel that it begins with, counted from 0.
        </Ask>
      </div>
      <div className="turned">
        <label htmlFor={turned}>Other way round</label>
        <input
          id={turned}
          type="checkbox"
          className="switch"
          checked={reversed}
          onChange={(event) => set({ ...recipe, reversed: event.target.checked })}
        />
        <Ask about="the way round">
          Patterns run from the first pixel of a zone to its last. The table shows both, and a bead that runs
          along.
        </Ask>
      </div>
    </div>
  );
}

interface AddProps {
  readonly piece: Piece;
  readonly zone: string;
  readonly onAdd: (part: ZoneSource) => void;
}

/** What may still come in: of a run or zone that is partly in, the pixels that are not. */
function AddPart({ piece, zone, onAdd }: AddProps) {
  const hand = useHand();
  const tool = useStore(hand.tool);
  const layout = layoutOf(piece);
  const has = new Set(pixelsOfZone(layout, zone));
  const freeOf = (name: string) => pixelsOfZone(layout, name).filter((pixel) => !has.has(pixel));
  const isFree = (name: string) => freeOf(name).length > 0;
  const add = (name: string) => {
    const free = freeOf(name);
    const isWhole = free.length === pixelsOfZone(layout, name).length;
    const whole = zones.find((other) => other.name === name)?.source ?? { kind: 'run', run: name };
    const part = isWhole ? whole : sourceOfAddresses(piece, free);
    if (part !== undefined) onAdd(part);
  };
  const runs = runsOf(piece).map(({ name }) => name);
  const zones = piece.zones.filter(({ name }) => name !== zone);
  const lassoing = tool.kind === 'lasso' && tool.into === zone;
  return (
    <div className="add-part">
      <select aria-label="Add a part" value="" onChange={(event) => add(event.target.value)}>
        <option value="">Add …</option>
        <optgroup label="Runs">{runs.map((name) => option(name, isFree(name)))}</optgroup>
        {zones.length > 0 && (
          <optgroup label="Zones">{zones.map(({ name }) => option(name, isFree(name)))}</optgroup>
        )}
      </select>
      <button
        type="button"
        className="quiet"
        aria-pressed={lassoing}
        onClick={() => (lassoing ? hand.putAway() : hand.take({ kind: 'lasso', into: zone }))}
      >
        Lasso more
      </button>
    </div>
  );
}

function option(name: string, isFree: boolean) {
  return (
    <option key={name} value={name} disabled={!isFree}>
      {name}
    </option>
  );
}

const manners: readonly (readonly [Manner, string])[] = [
  ['behind', 'one after the other'],
  ['beside', 'side by side'],
];

function MannerChoice({ value, onChange }: { value: Manner; onChange(manner: Manner): void }) {
  const name = useId();
  return (
    <fieldset className="manner">
      <legend className="unseen">How the parts lie to each other</legend>
      {manners.map(([manner, words]) => (
        <label key={manner}>
          <input type="radio" name={name} checked={value === manner} onChange={() => onChange(manner)} />
          {words}
        </label>
      ))}
      <Ask about="side by side">
        One after the other, light runs through the first part and then through the next. Side by side, all
        parts show the same at the same time, like the two sleeves of a coat.
      </Ask>
    </fieldset>
  );
}
