/** What this browser keeps of the work on the bench: one record for each tab, written at every rest. */

import { type History, startWork, type Work } from '../../../engine/edit/history.ts';
import { parseHistory } from '../../../engine/edit/history-file.ts';

/** The part of the browser's storage that is needed here. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/** A record as it is found again. */
export interface Kept {
  /** When it was written, in milliseconds since 1970. */
  readonly at: number;
  /** The piece as the text of a file: like any other, it is checked when it is opened. */
  readonly text: string;
  readonly history: History;
  /** It holds work that is in no file. */
  readonly unsaved: boolean;
}

const prefix = 'weftlight kept ';

/**
 * Keeps a work under the name of its tab. Where there is too little room, the steps to take back are left out.
 * @returns false if the browser keeps nothing
 */
export function keep(shelf: Shelf, tab: string, work: Work, unsaved: boolean, at: number): boolean {
  return [work.history, startWork(work.piece).history].some((history) => {
    try {
      shelf.setItem(prefix + tab, JSON.stringify({ at, piece: work.piece, history, unsaved }));
      return true;
    } catch {
      return false;
    }
  });
}

/** The record of a tab; null if there is none, or none that can be read. Without its steps if these are not sound. */
export function take(shelf: Shelf, tab: string): Kept | null {
  const record = parsed(shelf.getItem(prefix + tab));
  if (typeof record?.at !== 'number' || typeof record.piece !== 'object' || record.piece === null)
    return null;
  const { at, piece, history, unsaved } = record;
  const begun: History = { done: [], undone: [], drag: null, growing: false };
  return {
    at,
    text: JSON.stringify(piece),
    history: parseHistory(history).value ?? begun,
    unsaved: unsaved === true,
  };
}

export function drop(shelf: Shelf, tab: string): void {
  shelf.removeItem(prefix + tab);
}

/** The tabs that have left unsaved work, the latest first. */
export function tabsWithWork(shelf: Shelf): string[] {
  const keys = Array.from({ length: shelf.length }, (_, i) => shelf.key(i) ?? '');
  return keys
    .filter((key) => key.startsWith(prefix))
    .map((key) => ({ tab: key.slice(prefix.length), record: parsed(shelf.getItem(key)) }))
    .filter(({ record }) => record?.unsaved === true)
    .sort((a, b) => Number(b.record?.at) - Number(a.record?.at))
    .map(({ tab }) => tab);
}

function parsed(text: string | null): Record<string, unknown> | null {
  try {
    const data: unknown = JSON.parse(text ?? 'null');
    return typeof data === 'object' && data !== null ? (data as Record<string, unknown>) : null;
  } catch {
    return null;
  }
}
