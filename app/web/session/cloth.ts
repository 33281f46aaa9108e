/** Rows of one cloth as they are woven. Rows of an older content stay until new ones lie over them. */
import type { ClothContent, ClothSubject } from './cloth-content.ts';

export interface ClothPlan extends ClothSubject {
  /** The stretch that is shown, in milliseconds of the look, or from the start of the clip. */
  readonly fromMs: number;
  readonly toMs: number;
  readonly rows: number;
  readonly currents: boolean;
}

export interface ClothListener {
  /** New rows, from the first to before the second. */
  onRows(fromRow: number, toRow: number): void;
  onCurrents?(milliamps: Float32Array, knownRows: number): void;
}

export class Cloth {
  levels = new Uint8Array(0);
  readonly milliamps: Float32Array;
  /** Smaller comes first; 0 is what the hand holds. */
  priority = 0;
  /** What the loft was asked for last, and in which revision. */
  asked: { readonly content: ClothContent; revision: number } | undefined;
  /** Rows of that which have not come yet; they begin at `next`, and go on from the top. */
  left: number;
  next = 0;
  /** Every row has been woven once, of whatever content. */
  private full = false;
  private knownCurrents = 0;
  private readonly listeners = new Set<ClothListener>();

  constructor(readonly plan: ClothPlan) {
    this.milliamps = new Float32Array(plan.rows);
    this.left = plan.rows;
  }

  /** All rows are to be woven again. A cloth that is full goes on from where it is, so that none is forgotten. */
  begin(content: ClothContent, revision: number): void {
    this.asked = { content, revision };
    this.left = this.plan.rows;
    if (!this.full) this.next = 0;
  }

  /** Rows that have come, to be read at any time. */
  get knownRows(): number {
    return this.full ? this.plan.rows : this.next;
  }

  takeRows(fromRow: number, levels: Uint8Array, count: number): void {
    const { rows } = this.plan;
    const rowBytes = levels.length / count;
    // Another number of pixels is another cloth.
    if (this.levels.length !== rowBytes * rows) this.levels = new Uint8Array(rowBytes * rows);
    this.levels.set(levels, fromRow * rowBytes);
    this.left -= count;
    this.next = (fromRow + count) % rows;
    this.full ||= this.left <= 0;
    for (const { onRows } of this.listeners) onRows(fromRow, fromRow + count);
  }

  takeCurrents(fromRow: number, milliamps: Float32Array): void {
    this.milliamps.set(milliamps, fromRow);
    this.knownCurrents = Math.max(this.knownCurrents, fromRow + milliamps.length);
    for (const { onCurrents } of this.listeners) onCurrents?.(this.milliamps, this.knownCurrents);
  }

  listen(listener: ClothListener): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }
}
