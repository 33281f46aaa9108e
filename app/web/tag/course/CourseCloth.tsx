/** The cloth of the clip itself, on the time axis of a course. */
import { ClothCanvas } from '../../cloth/ClothCanvas.tsx';
import { useSession } from '../../session/context.ts';
import { usePart } from '../../session/store.ts';
import { useClipInHand } from '../clip-in-hand.ts';
import { shownLength, type Times } from './span.ts';

interface Props {
  readonly times: Times;
  readonly spanMs: number;
  readonly height: number;
}

/** It is what a hand works on. */
const priority = 0;
const threadHeight = 3;

export function CourseCloth({ times, spanMs, height }: Props) {
  const session = useSession();
  const { at } = useClipInHand();
  const view = usePart(session.bench, ({ open }) =>
    open?.view.clips.find((one) => one.look === at.look && one.track === at.track && one.clip === at.clip),
  );
  const shown = shownLength(times);
  const rows = Math.round((height / threadHeight) * (shown / spanMs));
  return (
    <div className="course-cloth" aria-hidden="true">
      <div style={{ height: `${(shown / spanMs) * 100}%` }}>
        {view !== undefined && rows > 0 && (
          <ClothCanvas
            look={at.look}
            clip={view}
            columns={view.columns}
            rows={rows}
            fromMs={0}
            toMs={shown}
            priority={priority}
          />
        )}
      </div>
    </div>
  );
}
