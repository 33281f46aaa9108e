/** Where the clip plays. */
import { useSession } from '../session/context.ts';
import { usePart } from '../session/store.ts';
import { Ask } from '../shell/Ask.tsx';
import { Choice } from './Choice.tsx';
import { useClipInHand, useClipPart } from './clip-in-hand.ts';
import { RowFault } from './RowFault.tsx';
import { type ZoneChoice, zoneChoices } from './zone-choices.ts';

const row = 'zone';

export function ZoneRow() {
  const session = useSession();
  const hand = useClipInHand();
  const zone = useClipPart((clip) => clip.zone);
  const choices = usePart(session.bench, ({ open }) => open && zoneChoices(open.piece));
  if (choices === null) return null;
  return (
    <>
      <Choice
        label="Plays on"
        value={zone}
        ask={
          <Ask about="zone">
            A named group of pixels, in an order of its own. Every run is one by itself; you can make others
            on the Place bench.
          </Ask>
        }
        onChange={(name) => hand.set(row, { zone: name })}
      >
        {options([choices.all])}
        <optgroup label="Runs">{options(choices.runs)}</optgroup>
        {choices.own.length > 0 && <optgroup label="Zones of your own">{options(choices.own)}</optgroup>}
      </Choice>
      <RowFault row={row} />
    </>
  );
}

function options(zones: readonly ZoneChoice[]) {
  return zones.map(({ name, count }) => (
    <option key={name} value={name}>
      {name} · {count === 1 ? '1 pixel' : `${count} pixels`}
    </option>
  ));
}
