/** The cloths that are in view: asked for, filled row by row as the loft weaves them, kept up to date. */
import type { Piece } from '../../../engine/piece/schema.ts';
import type { LoftReply, LoftRequest } from '../worker/protocol.ts';
import { clipAt } from './clip-at.ts';
import { Cloth, type ClothPlan } from './cloth.ts';
import { type ClothContent, clothContent, isKin, sameContent } from './cloth-content.ts';

type Woven = Extract<LoftReply, { kind: 'woven' }>;
type Currents = Extract<LoftReply, { kind: 'currents' }>;

type ClothRequest = Extract<LoftRequest, { kind: 'weave' | 'unweave' }>;

/** What the loft works on. */
interface Held {
  readonly revision: number;
  readonly piece: Piece;
  readonly brightness: number;
}

/** Cloths of clips that were in view a moment ago: one that goes to another track is there at once. */
interface Kept {
  readonly content: ClothContent;
  readonly plan: ClothPlan;
  readonly levels: Uint8Array;
}
const mostKept = 32;

export class Cloths {
  private readonly wanted = new Map<string, Cloth>();
  private count = 0;
  private held: Held | null = null;
  private kept: Kept[] = [];
  /** Told whenever nothing is left to weave of what the hand holds. */
  onHandServed: () => void = () => {};

  /** @param shown the piece as the maker sees it; may be ahead of what the loft holds */
  constructor(
    private readonly send: (request: ClothRequest) => void,
    private readonly shown: () => Piece | undefined,
  ) {}

  get brightness(): number {
    return this.held?.brightness ?? 0;
  }

  /** A cloth that is kept up to date until it is dropped. */
  want(plan: ClothPlan, priority: number): { cloth: Cloth; drop: () => void } {
    const name = String(this.count++);
    const cloth = new Cloth(plan);
    cloth.priority = priority;
    this.wanted.set(name, cloth);
    this.ask(name, cloth);
    const drop = () => {
      this.wanted.delete(name);
      if (cloth.left > 0) this.send({ kind: 'unweave', cloth: name });
      this.keep(cloth);
    };
    return { cloth, drop };
  }

  /** The loft has another revision or brightness: what has changed is woven anew, what was left is gone on with. */
  reweave(revision: number, piece: Piece, brightness: number): void {
    this.held = { revision, piece, brightness };
    for (const [name, cloth] of this.wanted) this.ask(name, cloth);
  }

  takeRows({ revision, cloth, fromRow, levels, rows }: Woven): void {
    if (revision !== this.held?.revision) return;
    const wanted = this.wanted.get(cloth);
    if (wanted === undefined) return;
    wanted.takeRows(fromRow, levels, rows);
    if (wanted.priority === 0 && this.handServed()) this.onHandServed();
  }

  takeCurrents({ revision, cloth, fromRow, milliamps }: Currents): void {
    if (revision === this.held?.revision) this.wanted.get(cloth)?.takeCurrents(fromRow, milliamps);
  }

  /** Whether there is something in hand, and it is woven. */
  handServed(): boolean {
    const inHand = [...this.wanted.values()].filter(({ priority }) => priority === 0);
    return inHand.length > 0 && inHand.every(({ left }) => left === 0);
  }

  private ask(name: string, cloth: Cloth): void {
    const shown = this.shown();
    if (this.held === null || shown === undefined) return;
    const { revision, piece, brightness } = this.held;
    const { plan, asked } = cloth;
    if (plan.clip !== undefined && !isKin(clipAt(piece, plan.clip), clipAt(shown, plan.clip))) return;
    const subject = clothContent(piece, plan);
    if (subject === undefined) return;
    const content = plan.currents ? [...subject, brightness] : subject;
    if (sameContent(asked?.content, content)) {
      if (cloth.left === 0 || asked?.revision === revision) return;
      asked!.revision = revision;
    } else {
      cloth.begin(content, revision);
      const levels = this.found(content, plan);
      if (levels !== undefined) cloth.takeRows(0, levels, plan.rows);
      if (cloth.left === 0) return;
    }
    const { fromMs, toMs, ...rest } = plan;
    const start = plan.clip === undefined ? 0 : clipAt(piece, plan.clip)!.startMilliseconds;
    this.send({
      kind: 'weave',
      revision,
      cloth: name,
      brightness,
      ...rest,
      fromMs: start + fromMs,
      toMs: start + toMs,
      firstRow: cloth.next,
      count: cloth.left,
      priority: cloth.priority,
    });
  }

  private keep({ plan, asked, left, levels }: Cloth): void {
    if (plan.clip === undefined || asked === undefined || left > 0) return;
    const { content } = asked;
    this.kept = [{ content, plan, levels }, ...this.kept].slice(0, mostKept);
  }

  private found(content: ClothContent, { clip, rows, fromMs, toMs }: ClothPlan): Uint8Array | undefined {
    if (clip === undefined) return undefined;
    const alike = (kept: Kept) =>
      kept.plan.rows === rows &&
      kept.plan.fromMs === fromMs &&
      kept.plan.toMs === toMs &&
      sameContent(kept.content, content);
    return this.kept.find(alike)?.levels;
  }
}
