import type { Piece, ZoneSource } from '../../piece/schema.ts';
import type { EditOf } from '../edit.ts';
import { namesOf } from '../references.ts';
import { freeName } from './free-name.ts';

/**
 * One more zone behind the others. Its name is the wanted one, or counts on from it where a zone or a run
 * has it: read it from the edit's `zone.name`.
 */
export function newZone(piece: Piece, source: ZoneSource, baseName: string): EditOf<'add-zone'> {
  const name = freeName(baseName, namesOf(piece, 'zone'));
  return { kind: 'add-zone', index: piece.zones.length, zone: { name, source } };
}
