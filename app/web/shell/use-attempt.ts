/** Edits whose refusal is told where they were tried. */
import { useState } from 'react';
import type { Diagnostic } from '../../../engine/diagnostic.ts';
import type { Edit } from '../../../engine/edit/edit.ts';
import { useSession } from '../session/context.ts';
import type { Manner } from '../session/hand.ts';

interface Attempts {
  /** Why the last attempt failed. */
  readonly fault: Diagnostic | null;
  /** True if the edit was taken. */
  attempt(edit: Edit, manner?: Manner): boolean;
  /** Something else than an edit failed, or nothing does any more. */
  tell(fault: Diagnostic | null): void;
}

export function useAttempt(): Attempts {
  const session = useSession();
  const [fault, setFault] = useState<Diagnostic | null>(null);
  return {
    fault,
    tell: setFault,
    attempt(edit, manner = 'step') {
      session.edit(edit, manner);
      const [refused] = session.bench.get().editFaults;
      setFault(refused ?? null);
      return refused === undefined;
    },
  };
}
