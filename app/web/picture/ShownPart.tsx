/** Which part of the piece the picture shows by itself: all of it, one track of the look, or one zone. */
import type { Look, Piece } from '../../../engine/piece/schema.ts';
import { useSession } from '../session/context.ts';
import { useStore } from '../session/store.ts';
import type { Spotlight } from '../worker/protocol.ts';

interface Part {
  readonly title: string;
  readonly spotlight: Spotlight;
}

export function ShownPart({ piece, look }: { piece: Piece; look: Look }) {
  const session = useSession();
  const shown = useStore(session.desk.spotlight);
  const tracks: Part[] = look.tracks.map(({ name }, track) => ({
    title: name ?? `track ${track + 1}`,
    spotlight: { track },
  }));
  const runs = piece.lines.flatMap((line) => line.runs);
  const zones: Part[] = [...runs, ...piece.zones].map(({ name }) => ({
    title: name,
    spotlight: { zone: name },
  }));
  // One track on one run: there is nothing to single out.
  if (tracks.length + zones.length <= 2 && shown === null) return null;
  const groups = [
    { label: 'one track', parts: tracks },
    { label: 'one zone', parts: zones },
  ];
  const parts = [...tracks, ...zones];
  const chosen = parts.findIndex(({ spotlight }) => same(spotlight, shown));
  return (
    <label className="shown-part" data-part={shown !== null}>
      <span>shows</span>
      <select
        value={chosen}
        onChange={({ target }) => session.desk.spotlight.set(parts[Number(target.value)]?.spotlight ?? null)}
      >
        <option value={-1}>all of it</option>
        {groups.map(({ label, parts: members }) => (
          <optgroup key={label} label={label}>
            {members.map((part) => (
              <option key={part.title} value={parts.indexOf(part)}>
                {part.title}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
    </label>
  );
}

function same(one: Spotlight, other: Spotlight | null): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
