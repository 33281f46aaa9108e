/** What lies on the bench: the open piece, how it came to be as it is, and what is wrong with it. */
import type { Diagnostic } from '../../../engine/diagnostic.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import type { PieceView } from '../worker/protocol.ts';

export interface OpenPiece {
  /** As the maker sees it; may be one edit ahead of what is on stage. */
  readonly piece: Piece;
  readonly view: PieceView;
  readonly warnings: readonly Diagnostic[];
  readonly unsaved: boolean;
}

/** A file that could not be opened. */
export interface Refusal {
  readonly fileName: string;
  readonly diagnostics: readonly Diagnostic[];
}

export interface Bench {
  readonly open: OpenPiece | null;
  /** Of the piece on stage; 0 before there is one. */
  readonly revision: number;
  /** Counts the files opened, so that a view can tell another piece from an edited one. */
  readonly opened: number;
  readonly refusal: Refusal | null;
  /** Why the last edit was not taken; empty once one is. */
  readonly editFaults: readonly Diagnostic[];
  readonly canUndo: boolean;
  readonly canRedo: boolean;
}

export const emptyBench: Bench = {
  open: null,
  revision: 0,
  opened: 0,
  refusal: null,
  editFaults: [],
  canUndo: false,
  canRedo: false,
};

/** Pieces before and after; edits of one drag share a mark and are undone together. */
export class History {
  private past: Piece[] = [];
  private future: Piece[] = [];
  private mark: string | null = null;

  record(before: Piece, mark: string | null): void {
    this.future = [];
    if (mark === null || mark !== this.mark) this.past.push(before);
    this.mark = mark;
  }

  /** The end of a drag: the next edit stands by itself. */
  rest(): void {
    this.mark = null;
  }

  /** Takes back the last edit for good. */
  withdraw(): Piece | null {
    this.mark = null;
    return this.past.pop() ?? null;
  }

  undo(now: Piece): Piece | null {
    return this.step(this.past, this.future, now);
  }

  redo(now: Piece): Piece | null {
    return this.step(this.future, this.past, now);
  }

  clear(): void {
    this.past = [];
    this.future = [];
    this.mark = null;
  }

  get canUndo(): boolean {
    return this.past.length > 0;
  }

  get canRedo(): boolean {
    return this.future.length > 0;
  }

  private step(from: Piece[], to: Piece[], now: Piece): Piece | null {
    const piece = from.pop();
    if (piece === undefined) return null;
    to.push(now);
    this.mark = null;
    return piece;
  }
}
