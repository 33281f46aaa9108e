/** What lies on the bench: the open piece, how it came to be as it is, and what is wrong with it. */
import type { Diagnostic } from '../../../engine/diagnostic.ts';
import type { nextSteps } from '../../../engine/edit/history.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import type { PieceView } from '../worker/protocol.ts';

export interface OpenPiece {
  /** As the maker sees it; may be one edit ahead of what is on stage. */
  readonly piece: Piece;
  readonly view: PieceView;
  readonly warnings: readonly Diagnostic[];
  readonly unsaved: boolean;
}

/** Where the open piece came from: a sample, a file, the first answers, or what this browser had kept. */
export type Origin = 'sample' | 'file' | 'answers' | 'kept';

/** A file that could not be opened. */
export interface Refusal {
  readonly fileName: string;
  readonly diagnostics: readonly Diagnostic[];
}

/** What undo and redo would do, in plain words; undefined where there is nothing. */
export type NextSteps = ReturnType<typeof nextSteps>;

export interface Bench {
  readonly open: OpenPiece | null;
  readonly origin: Origin;
  /** Of the piece on stage; 0 before there is one. */
  readonly revision: number;
  /** Counts the files opened, so that a view can tell another piece from an edited one. */
  readonly opened: number;
  readonly refusal: Refusal | null;
  /** Why the last edit was not taken; empty once one is. */
  readonly editFaults: readonly Diagnostic[];
  readonly next: NextSteps;
}

export const emptyBench: Bench = {
  open: null,
  origin: 'sample',
  revision: 0,
  opened: 0,
  refusal: null,
  editFaults: [],
  next: {},
};
