/** The cloth of the clip itself, on the time axis of a course. */
import type { Clip, Look } from '../../../../engine/piece/schema.ts';
import { ClothCanvas } from '../../cloth/ClothCanvas.tsx';
import { useSession } from '../../session/context.ts';
import { usePart } from '../../session/store.ts';
import { useClipInHand } from '../clip-in-hand.ts';
import { shownLength } from './span.ts';

interface Props {
  readonly clip: Clip;
  readonly look: Look;
  readonly spanMs: number;
  readonly height: number;
}

/** After the cloths of the loom, which are larger. */
const priority = 25;
const threadHeight = 3;

export function CourseCloth({ clip, look, spanMs, height }: Props) {
  const session = useSession();
  const { at } = useClipInHand();
  const view = usePart(session.bench, ({ open }) =>
    open?.view.clips.find((one) => one.look === at.look && one.track === at.track && one.clip === at.clip),
  );
  const shown = shownLength(clip, look);
  const fromMs = clip.endless ? -clip.startMilliseconds : 0;
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
            fromMs={fromMs}
            toMs={fromMs + shown}
            priority={priority}
          />
        )}
      </div>
    </div>
  );
}
