import { useRowFaults } from './clip-in-hand.ts';

/** Why the piece does not take what was just tried on this row. */
export function RowFault({ row }: { row: string }) {
  const [fault] = useRowFaults(row);
  if (fault === undefined) return null;
  return (
    <p className="told" role="alert">
      {fault.message} {fault.advice}
    </p>
  );
}
