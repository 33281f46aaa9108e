/** What the maker looks at and holds: none of it is part of the piece, and none of it is undone. */
import type { Side } from '../../../engine/edit/kinds/runs.ts';
import type { Clip } from '../../../engine/piece/schema.ts';
import type { BenchName } from '../shell/benches.ts';
import type { Spotlight } from '../worker/protocol.ts';
import { Store } from './store.ts';

export class Desk {
  readonly bench = new Store<BenchName>('compose');
  /** "What have you got?" is being asked. */
  readonly starting = new Store(false);
  /** The supply is being seen to. */
  readonly supplyOpen = new Store(false);
  /** The keys of the open bench are being told. */
  readonly keysOpen = new Store(false);
  /** A sample invites to make a piece of one's own. */
  readonly welcome = new Store(true);
  /** The picture fills the window, to be held up against a garment. */
  readonly large = new Store(false);
  /** Pixels in wire order that something on the page points at; the picture marks them. */
  readonly pointed = new Store<readonly number[]>([]);
  /** Names of the runs that the next move on the Place bench is for. */
  readonly runsInHand = new Store<readonly string[]>([]);
  /** The place that is worked on, on the bench or on the body. */
  readonly side = new Store<Side>('flat');
  /** The swatch book lies open at the edge of the Compose bench. */
  readonly bookOpen = new Store(false);
  /** A clip to be pasted, into any look. */
  readonly copied = new Store<Clip | null>(null);
  /** The time that what is being pulled on the loom came to lie on, in milliseconds of the look. */
  readonly snapped = new Store<number | null>(null);
  /** Columns of cloths go by where their pixels lie, not by the way they are wired. */
  readonly columnsAsPlaced = new Store(false);
  /** What of the piece the picture shows by itself; null for all of it. */
  readonly spotlight = new Store<Spotlight | null>(null);
}
