/** The known length by numbers: where its two ends are on the picture, and how long it is. */
import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import { useSession } from '../../session/context.ts';
import { NumberEntry } from '../zones/NumberEntry.tsx';
import { garmentsOf, type ShownGarment } from './garments.ts';
import { knownLengthId } from './MeasureLayer.tsx';
import { type KnownLength, type Spot, scaledBy } from './placing.ts';

interface Props {
  readonly garment: ShownGarment;
  readonly known: KnownLength;
  readonly side: Side;
}

export function KnownLengthFields({ garment, known, side }: Props) {
  const shelf = garmentsOf(useSession());
  const { size, placing } = garment;
  const set = (change: Partial<KnownLength>) => {
    const next = { ...known, ...change };
    shelf.put(side, { ...garment, known: next, placing: scaledBy(placing, size, next) ?? placing });
  };
  const nothing = () => {};
  const end = (label: string, [x, y]: Spot, change: (spot: Spot) => void) => (
    <>
      <NumberEntry
        label={`${label}, right`}
        value={x}
        min={0}
        max={size.width}
        onChange={(to) => change([to, y])}
        onRest={nothing}
      />
      <NumberEntry
        label={`${label}, down`}
        value={y}
        min={0}
        max={size.height}
        onChange={(to) => change([x, to])}
        onRest={nothing}
      />
    </>
  );
  return (
    <div className="known-length">
      <NumberEntry
        id={knownLengthId}
        label="The line is"
        unit="mm long"
        value={known.millimetres}
        min={1}
        max={20_000}
        onChange={(millimetres) => set({ millimetres })}
        onRest={nothing}
      />
      <details>
        <summary>Its ends, in picture pixels</summary>
        <div className="known-ends">
          {end('from', known.from, (from) => set({ from }))}
          {end('to', known.to, (to) => set({ to }))}
        </div>
      </details>
    </div>
  );
}
