/**
 * Where pictures wait from one visit to the next: in this browser, by the name of the piece. A browser that
 * keeps nothing, as in a private window, makes the drawer one that is always empty.
 */
import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import type { KnownLength, PictureSize, Placing } from './placing.ts';

/** A photo or drawing, and how it lies. Nothing of it is in the piece's file. */
export interface Garment {
  readonly picture: Blob;
  readonly fileName: string;
  readonly size: PictureSize;
  readonly placing: Placing;
  /** The line that scaled it last. */
  readonly known: KnownLength | null;
}

type Address = readonly [piece: string, side: Side];

const shelf = 'garments';

export class Drawer {
  private readonly opened: Promise<IDBDatabase | null> = openDatabase();

  async take(address: Address): Promise<Garment | null> {
    const found = await this.ask('readonly', (store) => store.get([...address]));
    return (found as Garment | undefined) ?? null;
  }

  async put(address: Address, garment: Garment | null): Promise<void> {
    await this.ask('readwrite', (store) =>
      garment === null ? store.delete([...address]) : store.put(garment, [...address]),
    );
  }

  /** What the browser answers; undefined where it does not. */
  private async ask(
    mode: IDBTransactionMode,
    request: (store: IDBObjectStore) => IDBRequest,
  ): Promise<unknown> {
    const database = await this.opened;
    if (database === null) return undefined;
    return new Promise((resolve) => {
      const nothing = () => resolve(undefined);
      try {
        const asked = request(database.transaction(shelf, mode).objectStore(shelf));
        asked.onsuccess = () => resolve(asked.result);
        asked.onerror = nothing;
      } catch {
        nothing();
      }
    });
  }
}

function openDatabase(): Promise<IDBDatabase | null> {
  return new Promise((resolve) => {
    const nothing = () => resolve(null);
    try {
      const opening = indexedDB.open('weftlight', 1);
      opening.onupgradeneeded = () => opening.result.createObjectStore(shelf);
      opening.onsuccess = () => resolve(opening.result);
      opening.onerror = nothing;
      opening.onblocked = nothing;
    } catch {
      nothing();
    }
  });
}
