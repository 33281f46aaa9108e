/** How bright the piece shines, and the way to keep that. */
import type { CSSProperties } from 'react';
import { useSession } from '../session/context.ts';
import { useStore } from '../session/store.ts';
import { percent } from '../session/words.ts';

/** @param start the brightness that the piece starts with, 0 to 255 */
export function Brightness({ start }: { start: number }) {
  const session = useSession();
  const { brightness } = useStore(session.playing);
  return (
    <div className="brightness">
      <label htmlFor="brightness">Brightness</label>
      <output htmlFor="brightness">{percent(brightness)}</output>
      <input
        id="brightness"
        type="range"
        min={0}
        max={255}
        value={brightness}
        aria-valuetext={percent(brightness)}
        style={{ '--share': `${(brightness / 255) * 100}%` } as CSSProperties}
        onChange={(event) => session.put({ brightness: Number(event.target.value) })}
      />
      {brightness !== start && (
        <button
          type="button"
          className="quiet small"
          title="The piece starts at this brightness from now on"
          onClick={() => session.edit({ kind: 'set-output', set: { startBrightness: brightness } })}
        >
          start here
        </button>
      )}
    </div>
  );
}
