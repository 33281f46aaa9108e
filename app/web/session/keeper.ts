/** Keeps the open piece in this browser, so that a reload, a crash or a closed lid loses nothing. */
import type { Piece } from '../../../engine/piece/schema.ts';
import { drop, type Kept, keep, type Shelf, tabsWithWork, take } from './keeping.ts';
import type { Session } from './session.ts';
import { inherit } from './tab.ts';

/** Written after this rest; whoever leaves sooner is heard by `pagehide`. */
const restMilliseconds = 400;

export class Keeper {
  private timer = 0;
  private written: { readonly piece: Piece; readonly unsaved: boolean } | null = null;

  /** @param shelf null where the browser keeps nothing */
  constructor(
    private readonly session: Session,
    private readonly shelf: Shelf | null,
    private readonly tab: string,
  ) {}

  /** What was on this tab's bench before it was loaded anew, or what a closed tab has left unsaved. */
  async find(): Promise<Kept | null> {
    const { shelf, tab } = this;
    if (shelf === null) return null;
    const own = take(shelf, tab);
    if (own !== null) return own;
    for (const other of tabsWithWork(shelf)) {
      if (!(await inherit(other))) continue;
      const left = take(shelf, other);
      drop(shelf, other);
      if (left !== null) return left;
    }
    return null;
  }

  /** From now on every change is kept. */
  start(): void {
    this.session.bench.subscribe(() => {
      window.clearTimeout(this.timer);
      this.timer = window.setTimeout(() => this.write(), restMilliseconds);
    });
    window.addEventListener('pagehide', () => this.write());
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'hidden') this.write();
    });
    window.addEventListener('beforeunload', (event) => {
      // What has been kept is there again when the page is.
      const { open } = this.session.bench.get();
      if (!this.write() && open?.unsaved === true) event.preventDefault();
    });
  }

  /** @returns false if the browser keeps nothing */
  private write(): boolean {
    window.clearTimeout(this.timer);
    const { shelf, tab, session, written } = this;
    const { open, origin } = session.bench.get();
    const { work } = session;
    if (shelf === null || open === null || work === null) return shelf !== null;
    const { unsaved } = open;
    if (written?.piece === work.piece && written.unsaved === unsaved) return true;
    // A sample that nobody has touched is found again without this.
    const untouched = origin === 'sample' && work.history.done.length === 0;
    if (untouched && written !== null) drop(shelf, tab);
    const kept = untouched || keep(shelf, tab, work, unsaved, Date.now());
    this.written = kept ? { piece: work.piece, unsaved } : null;
    return kept;
  }
}

/** The browser's storage; null where it is switched off. */
export function browserShelf(): Shelf | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}
