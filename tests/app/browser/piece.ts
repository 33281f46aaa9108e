/** The piece on the page, and the piece that edits make of another. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { applyEdit } from '../../../engine/edit/apply.ts';
import type { Edit } from '../../../engine/edit/edit.ts';
import { loadPiece } from '../../../engine/piece/load.ts';
import type { Piece } from '../../../engine/piece/schema.ts';

/** The text of the file that the page hands over. */
export async function savedText(page: Page): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  return readFileSync(await (await download).path(), 'utf8');
}

export async function pieceOn(page: Page): Promise<Piece> {
  const { value, diagnostics } = loadPiece(await savedText(page));
  expect(diagnostics).toEqual([]);
  return value!;
}

export function afterEdits(piece: Piece, ...edits: Edit[]): Piece {
  return edits.reduce((before, edit) => {
    const { value, diagnostics } = applyEdit(before, edit);
    expect(diagnostics).toEqual([]);
    return value!.piece;
  }, piece);
}
