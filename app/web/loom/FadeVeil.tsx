/** What the fades of a clip take of its cloth, and the small corners they are pulled by. */
import type { Clip } from '../../../engine/piece/schema.ts';

const share = (fade: number, length: number) => `${Math.min(100, (fade / length) * 100)}%`;

/** Keys do the same on the clip itself, so the corners are for pointers alone. */
export function FadeVeil({ clip, shownMilliseconds }: { clip: Clip; shownMilliseconds: number }) {
  const { fadeInMilliseconds, fadeOutMilliseconds, endless } = clip;
  const fadeIn = share(fadeInMilliseconds, shownMilliseconds);
  const fadeOut = share(fadeOutMilliseconds, shownMilliseconds);
  return (
    <>
      <span className="veil-in" style={{ height: fadeIn }} aria-hidden="true" />
      <span className="fade-corner in" style={{ top: fadeIn }} data-grip="fade-in" aria-hidden="true" />
      <span className="edge start" data-grip="start" aria-hidden="true" />
      <span className="edge end" data-grip="end" aria-hidden="true" />
      {!endless && (
        <>
          <span className="veil-out" style={{ height: fadeOut }} aria-hidden="true" />
          <span
            className="fade-corner out"
            style={{ bottom: fadeOut }}
            data-grip="fade-out"
            aria-hidden="true"
          />
        </>
      )}
    </>
  );
}
