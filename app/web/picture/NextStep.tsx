/** In a picture where nothing shines: what to do next, on whatever bench is open. */
import type { Look } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';
import { usePart, useStore } from '../session/store.ts';
import type { BenchName } from '../shell/benches.ts';

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
  if (origin !== 'sample' || !untouched || !welcome) return null;
  return (
    <div className="next-step">
      <p>A sample to take apart.</p>
      <button type="button" className="quiet small" onClick={() => session.desk.starting.set(true)}>
        Make your own
      </button>
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
    </div>
  );
}
