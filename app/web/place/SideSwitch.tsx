/** Which of the two tables is worked on; where there is room for one only, it is the one that shows. */
import { type Side, sides } from '../../../engine/edit/kinds/runs.ts';
import { useSession } from '../session/context.ts';
import { useStore } from '../session/store.ts';

const titles: Readonly<Record<Side, string>> = { flat: 'Flat', worn: 'Worn' };

export function SideSwitch() {
  const session = useSession();
  const side = useStore(session.desk.side);
  return (
    <fieldset className="side-switch" aria-label="Table">
      {sides.map((each) => (
        <button
          key={each}
          type="button"
          aria-pressed={side === each}
          onClick={() => {
            session.endDrag();
            session.desk.side.set(each);
          }}
        >
          {titles[each]}
        </button>
      ))}
    </fieldset>
  );
}
