/** The cloths that are in view: asked for, filled row by row as the loft weaves them, kept up to date. */
import type { ClipPosition, LoftReply, WeaveRequest } from '../worker/protocol.ts';

export interface ClothPlan {
  readonly look: number;
  readonly clip?: ClipPosition;
  readonly rows: number;
  /** Whether the currents are read as well. */
  readonly peaks: boolean;
  readonly priority: number;
}

type WovenRows = Extract<LoftReply, { kind: 'woven' }>;

/** Rows of an older revision stay until new ones have been woven over them. */
export class Cloth {
  levels = new Uint8Array(0);
  readonly milliamps: Float32Array;
  /** Rows of the present revision. */
  wovenRows = 0;
  private readonly listeners = new Set<() => void>();

  constructor(readonly plan: ClothPlan) {
    this.milliamps = new Float32Array(plan.rows);
  }

  take({ fromRow, levels, milliamps }: WovenRows): void {
    const rowBytes = levels.length / milliamps.length;
    if (this.levels.length !== rowBytes * this.plan.rows) {
      this.levels = new Uint8Array(rowBytes * this.plan.rows);
    }
    this.levels.set(levels, fromRow * rowBytes);
    this.milliamps.set(milliamps, fromRow);
    this.wovenRows = fromRow + milliamps.length;
    for (const listener of this.listeners) listener();
  }

  listen(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }
}

export class Cloths {
  private readonly wanted = new Map<string, Cloth>();
  private count = 0;
  private revision = 0;
  brightness = 0;

  constructor(private readonly send: (request: WeaveRequest) => void) {}

  /** A cloth that is kept up to date until it is dropped. */
  want(plan: ClothPlan): { cloth: Cloth; drop: () => void } {
    const name = String(this.count++);
    const cloth = new Cloth(plan);
    this.wanted.set(name, cloth);
    if (this.revision > 0) this.ask(name, cloth);
    return { cloth, drop: () => this.wanted.delete(name) };
  }

  /** Everything in view is woven anew, for another revision or another brightness. */
  reweave(revision: number, brightness: number): void {
    this.revision = revision;
    this.brightness = brightness;
    for (const [name, cloth] of this.wanted) this.ask(name, cloth);
  }

  take(rows: WovenRows): void {
    if (rows.revision === this.revision) this.wanted.get(rows.cloth)?.take(rows);
  }

  private ask(cloth: string, { plan }: Cloth): void {
    const { revision, brightness } = this;
    this.send({ kind: 'weave', revision, cloth, brightness, ...plan });
  }
}
