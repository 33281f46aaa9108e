/** A name for this tab that outlives a reload, and whether another tab is still open. */

const key = 'weftlight tab';

/** A reload's new page may come before the old one has let go of its name. */
const patienceMilliseconds = 500;

/** The name of this tab. A copy of a tab gets another name than its original. */
export async function claimTab(): Promise<string> {
  const own = read();
  if (own !== null && (await hold(own, patienceMilliseconds))) return own;
  const fresh = crypto.randomUUID();
  await hold(fresh, 0);
  try {
    sessionStorage.setItem(key, fresh);
  } catch {
    // Without such a store a reload is a new visit.
  }
  return fresh;
}

/** Takes over the name of a tab that has been closed; false if it is still open. */
export function inherit(tab: string): Promise<boolean> {
  return hold(tab, 0);
}

function read(): string | null {
  try {
    return sessionStorage.getItem(key);
  } catch {
    return null;
  }
}

/** Holds a name as long as this page lives. Where the browser has no locks, every name is free. */
function hold(tab: string, patience: number): Promise<boolean> {
  if (navigator.locks === undefined) return Promise.resolve(true);
  return new Promise((resolve) => {
    const options = patience > 0 ? { signal: AbortSignal.timeout(patience) } : { ifAvailable: true };
    navigator.locks
      .request(`${key} ${tab}`, options, (lock) => {
        resolve(lock !== null);
        return lock === null ? undefined : new Promise<void>(() => {});
      })
      .catch(() => resolve(false));
  });
}
