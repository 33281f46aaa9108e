/** The bench where runs are laid out: where each pixel lies on the bench and on the body. */
import { useSession } from '../session/context.ts';
import { usePart } from '../session/store.ts';

export function PlaceBench() {
  const session = useSession();
  const piece = usePart(session.bench, (bench) => bench.open?.piece);
  if (piece === undefined) return <section className="place" aria-label="Place" />;
  return (
    <section className="place" aria-label="Place">
      <p>{piece.lines.flatMap((line) => line.runs.map((run) => run.name)).join(', ')}</p>
    </section>
  );
}
