/** Over the picture: what a maker may do next, as long as something plain is missing. */
import type { Look } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import type { BenchName } from '../shell/benches.ts';
import { Fault } from '../shell/Fault.tsx';
import { useAttempt } from '../shell/use-attempt.ts';
import { addLook } from '../thread/add-look.ts';

const lines: Record<BenchName, string> = {
  compose: 'Nothing shines yet: tap a swatch, or carry it here.',
  place: 'When all of it lies in its place, give it light.',
  firmware: 'This look is dark: give it light first.',
};

export function NextStep({ look }: { look: Look }) {
  const session = useSession();
  const bench = useStore(session.desk.bench);
  const origin = usePart(session.bench, (now) => now.origin);
  const untouched = usePart(session.bench, ({ next, open }) => next.undo === undefined && !open?.unsaved);
  const welcome = useStore(session.desk.welcome);
  if (look.tracks.every(({ clips }) => clips.length === 0)) {
    const toLight = () => {
      session.desk.bench.set('compose');
      session.desk.bookOpen.set(true);
    };
    return (
      <div className="next-step">
        <p>{lines[bench]}</p>
        {bench !== 'compose' && (
          <button type="button" className="quiet small" onClick={toLight}>
            Lay a swatch on it
          </button>
        )}
      </div>
    );
  }
  if (!welcome) return null;
  if (origin === 'sample' && untouched) {
    return (
      <div className="next-step">
        <p>A sample to take apart.</p>
        <button type="button" className="quiet small" onClick={() => session.desk.starting.set(true)}>
          Make your own
        </button>
        <Later />
      </div>
    );
  }
  return origin === 'answers' && bench === 'compose' && <SecondLook />;
}

/** A press of the button steps along the thread: with a single look on it nothing is seen to happen. */
function SecondLook() {
  const session = useSession();
  const piece = usePart(session.bench, (now) => now.open?.piece);
  const { fault, attempt } = useAttempt();
  const steps = piece?.controls.buttons.some(({ press }) => press?.do === 'next-look');
  if (piece?.looks.length !== 1 || !steps) return null;
  return (
    <div className="next-step">
      <p>Now a second look for the button to step to.</p>
      <Fault fault={fault} />
      <button type="button" className="quiet small" onClick={() => addLook(session, piece, attempt)}>
        Add a look
      </button>
      <Later />
    </div>
  );
}

function Later() {
  const session = useSession();
  return (
    <button
      type="button"
      className="quiet small icon"
      aria-label="Thank you, later"
      onClick={() => session.desk.welcome.set(false)}
    >
      <svg viewBox="0 0 20 20" aria-hidden="true">
        <path d="M5 5 L15 15 M15 5 L5 15" />
      </svg>
    </button>
  );
}
