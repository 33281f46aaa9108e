/** Why something was not done, said where the hand is. */
import type { Diagnostic } from '../../../engine/diagnostic.ts';

export function Fault({ fault }: { fault: Diagnostic | null }) {
  if (fault === null) return null;
  return (
    <p className="fault" role="alert">
      {fault.message} {fault.advice}
    </p>
  );
}
