/** The session for the components below. */
import { createContext, useContext } from 'react';
import type { Session } from './session.ts';

export const SessionContext = createContext<Session | null>(null);

export function useSession(): Session {
  const session = useContext(SessionContext);
  if (session === null) throw new Error('A component stands outside of the session.');
  return session;
}
