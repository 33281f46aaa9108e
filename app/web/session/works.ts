/** The open piece in the states that may differ for a while, and how it comes to the bench. */
import { type History, startWork, type Work } from '../../../engine/edit/history.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import type { Origin } from './bench.ts';

export interface Works {
  /** As the maker sees it; may be some edits ahead of what is on stage. */
  readonly shown: Work;
  /** As the stage took it last. */
  readonly played: Work;
  /** As the maker has it in a file, or began with; null for work that is in no file. */
  readonly saved: Piece | null;
}

export interface Arrival {
  readonly origin: Origin;
  /** The steps that led to the piece, if it is taken up again. */
  readonly history?: History;
  /** It holds work that is in no file. */
  readonly unsaved?: boolean;
}

export function arrived(piece: Piece, { history, unsaved = false }: Arrival): Works {
  const work = history === undefined ? startWork(piece) : { piece, history };
  return { shown: work, played: work, saved: unsaved ? null : piece };
}

export function isUnsaved({ shown, saved }: Works): boolean {
  return shown.piece !== saved;
}
