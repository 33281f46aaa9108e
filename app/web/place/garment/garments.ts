/** The pictures under both tables of the open piece, as long as the page is open; kept in the drawer. */
import type { Side } from '../../../../engine/edit/kinds/runs.ts';
import type { Session } from '../../session/session.ts';
import { Store } from '../../session/store.ts';
import { Drawer, type Garment } from './drawer.ts';
import type { PictureSize, Placing } from './placing.ts';

export type { Garment } from './drawer.ts';

/** A garment that is shown, and the address under which the page has its picture. */
export interface ShownGarment extends Garment {
  readonly url: string;
}

export type Garments = Readonly<Record<Side, ShownGarment | null>>;

const none: Garments = { flat: null, worn: null };

/** Moving a picture is many small changes; the drawer gets the last of them. */
const restMilliseconds = 300;

export class GarmentShelf {
  readonly shown = new Store<Garments>(none);
  private readonly drawer = new Drawer();
  private pieceName: string | undefined;
  private opened = 0;
  private readonly waiting = new Map<Side, number>();

  constructor(session: Session) {
    const follow = () => {
      const { open, opened } = session.bench.get();
      this.follow(open?.piece.name, opened);
    };
    session.bench.subscribe(follow);
    follow();
  }

  put(side: Side, garment: Garment | null): void {
    const before = this.shown.get()[side];
    if (before !== null && before.picture !== garment?.picture) URL.revokeObjectURL(before.url);
    const url = before?.picture === garment?.picture ? before?.url : undefined;
    const shown = garment && { ...garment, url: url ?? URL.createObjectURL(garment.picture) };
    this.shown.merge({ [side]: shown });
    this.keep(side);
  }

  place(side: Side, placing: Placing): void {
    const garment = this.shown.get()[side];
    if (garment !== null) this.put(side, { ...garment, placing });
  }

  /** Another piece has its own pictures; the same one under a new name keeps what it has. */
  private follow(pieceName: string | undefined, opened: number): void {
    if (pieceName === this.pieceName && opened === this.opened) return;
    const isSame = opened === this.opened;
    for (const side of sides) this.keepNow(side);
    this.pieceName = pieceName;
    this.opened = opened;
    if (isSame) for (const side of sides) this.keep(side);
    else for (const side of sides) void this.fetch(side);
  }

  private async fetch(side: Side): Promise<void> {
    const { pieceName, opened } = this;
    const before = this.shown.get()[side];
    if (before !== null) URL.revokeObjectURL(before.url);
    this.shown.merge({ [side]: null });
    if (pieceName === undefined) return;
    const found = await this.drawer.take([pieceName, side]);
    const isLate = this.opened !== opened || this.shown.get()[side] !== null;
    if (found === null || isLate) return;
    this.shown.merge({ [side]: { ...found, url: URL.createObjectURL(found.picture) } });
  }

  private keep(side: Side): void {
    window.clearTimeout(this.waiting.get(side));
    this.waiting.set(
      side,
      window.setTimeout(() => this.keepNow(side), restMilliseconds),
    );
  }

  private keepNow(side: Side): void {
    if (!this.waiting.has(side)) return;
    window.clearTimeout(this.waiting.get(side));
    this.waiting.delete(side);
    if (this.pieceName === undefined) return;
    const garment = this.shown.get()[side];
    if (garment === null) void this.drawer.put([this.pieceName, side], null);
    else {
      const { url: _, ...kept } = garment;
      void this.drawer.put([this.pieceName, side], kept);
    }
  }
}

const sides: readonly Side[] = ['flat', 'worn'];

const shelves = new WeakMap<Session, GarmentShelf>();

/** One shelf a session, so that pictures stay when another bench is looked at. */
export function garmentsOf(session: Session): GarmentShelf {
  let shelf = shelves.get(session);
  if (shelf === undefined) {
    shelf = new GarmentShelf(session);
    shelves.set(session, shelf);
  }
  return shelf;
}

/** Photos of a phone have 5 to 12 MB. */
const mostBytes = 40_000_000;

/** What a drawing says nothing of, a browser makes up; this many pixels across do for one that is silent too. */
const silentSize: PictureSize = { width: 1000, height: 1000 };

/** The size of a picture as the browser decodes it; undefined for what it cannot show. */
export async function sizeOfPicture(picture: Blob): Promise<PictureSize | undefined> {
  if (picture.size > mostBytes) return undefined;
  const url = URL.createObjectURL(picture);
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    const { naturalWidth: width, naturalHeight: height } = image;
    return width > 0 && height > 0 ? { width, height } : silentSize;
  } catch {
    return undefined;
  } finally {
    URL.revokeObjectURL(url);
  }
}
