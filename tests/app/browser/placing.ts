/** The Place bench under real pointers and keys. */
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { layInRoom } from '../../../app/web/place/lay/add.ts';
import { applyEdit } from '../../../engine/edit/apply.ts';
import type { Edit } from '../../../engine/edit/edit.ts';
import { changeCount } from '../../../engine/edit/offers/count.ts';
import { removeRun } from '../../../engine/edit/offers/remove.ts';
import type { Piece, Run } from '../../../engine/piece/schema.ts';
import { axeFindings } from './axe.ts';
import { pieceOn } from './piece.ts';
import { samplePiece } from './samples.ts';
import { eventually, type House, sizes, visit } from './visit.ts';

const parasol = samplePiece('jellyfish-parasol');

async function openPlace(
  house: House,
  viewport: { width: number; height: number } = sizes.desk,
): Promise<Page> {
  const { page, complaints } = await visit(house, { viewport });
  await page.getByRole('button', { name: 'Place', exact: true }).click();
  await page.locator('.surface .run').first().waitFor();
  expect(complaints).toEqual([]);
  return page;
}

function edited(piece: Piece, edit: Edit | undefined): Piece {
  const { value, diagnostics } = applyEdit(piece, edit!);
  expect(diagnostics).toEqual([]);
  return value!.piece;
}

const runOf = (piece: Piece, name: string): Run =>
  piece.lines.flatMap(({ runs }) => runs).find((run) => run.name === name)!;
const table = (page: Page, side: 'flat' | 'worn') => page.locator(`.surface[data-side="${side}"]`);
const onTable = (page: Page, side: 'flat' | 'worn', name: string) =>
  table(page, side).locator(`[data-run="${name}"]`);
const undo = (page: Page) => page.getByRole('button', { name: /^Undo/ });
const nextUndo = (page: Page) => undo(page).getAttribute('aria-label');

async function middleOf(thing: Locator): Promise<{ x: number; y: number }> {
  const { x, y, width, height } = (await thing.boundingBox())!;
  return { x: x + width / 2, y: y + height / 2 };
}

/** In several moves, as a hand does. */
async function drag(page: Page, from: { x: number; y: number }, to: { x: number; y: number }): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (const share of [0.3, 0.7, 1]) {
    await page.mouse.move(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share);
  }
  await page.mouse.up();
}

async function millimetresPerPixel(page: Page): Promise<number> {
  const matrix = await table(page, 'flat').locator('.runs').getAttribute('transform');
  return 1 / Number(/matrix\(([\d.]+)/.exec(matrix!)![1]);
}

export function testPlacing(house: () => House): void {
  test('L9 a ring is laid down, moved and pulled: one step each, and the piece is what the edits give', async () => {
    const page = await openPlace(house());
    await page.getByRole('button', { name: 'Ring', exact: true }).click();
    const laid = edited(parasol, layInRoom(parasol, 'ring'));
    expect(await pieceOn(page)).toEqual(laid);
    expect(await page.getByLabel('Name of the run').inputValue()).toBe('ring');

    const scale = await millimetresPerPixel(page);
    const reach = (await onTable(page, 'flat', 'ring').locator('.tape').boundingBox())!;
    const from = { x: reach.x + 4, y: reach.y + reach.height / 2 };
    await page.keyboard.down('Alt');
    await drag(page, from, { x: from.x + 40, y: from.y - 25 });
    await page.keyboard.up('Alt');
    expect(await nextUndo(page)).toBe('Undo: Move run ring');
    const moved = await pieceOn(page);
    const [before, after] = [runOf(laid, 'ring').flat, runOf(moved, 'ring').flat];
    if (before.kind !== 'ring' || after.kind !== 'ring') throw new Error('The ring is no ring any more.');
    const by: [number, number] = [after.centre[0] - before.centre[0], after.centre[1] - before.centre[1]];
    expect(by[0]).toBeCloseTo(40 * scale, 3);
    expect(by[1]).toBeCloseTo(25 * scale, 3);
    expect(moved).toEqual(edited(laid, { kind: 'set-run', run: 'ring', set: { flat: after } }));

    const rim = await middleOf(
      table(page, 'flat').locator('.knob', { hasText: 'larger ring' }).locator('rect'),
    );
    await drag(page, rim, { x: rim.x + 30, y: rim.y });
    const pulled = await pieceOn(page);
    const count = Math.round(
      (Math.PI * (after.diameterMillimetres + 60 * scale)) /
        ((after.diameterMillimetres * Math.PI) / after.count),
    );
    expect(pulled).toEqual(edited(moved, changeCount(moved, 'ring', count, 'pitch').value));
    expect(await page.getByLabel('Pixels', { exact: true }).inputValue()).toBe(String(count));

    for (const expected of [moved, laid, parasol]) {
      await undo(page).click();
      expect(await pieceOn(page)).toEqual(expected);
    }
    expect(await undo(page).isDisabled()).toBe(true);
  });

  test('L10 by keys alone: a strip is laid down, taken, moved, turned, duplicated and removed', async () => {
    const page = await openPlace(house());
    await page.getByRole('button', { name: 'Strip', exact: true }).focus();
    await page.keyboard.press('Enter');
    const laid = edited(parasol, layInRoom(parasol, 'strip'));
    await onTable(page, 'flat', 'tentacle 8').focus();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    for (const key of ['ArrowRight', 'ArrowRight', 'Shift+ArrowUp', 'ArrowLeft'])
      await page.keyboard.press(key);
    await page.keyboard.press('[');
    const moved = edited(laid, { kind: 'move-runs', side: 'flat', runs: ['strip'], by: [1, 10] });
    const now = await pieceOn(page);
    const flat = runOf(now, 'strip').flat;
    expect(flat).toMatchObject({ kind: 'straight', directionDegrees: 15 });
    const { start } = runOf(moved, 'strip').flat as Extract<Run['flat'], { kind: 'straight' }>;
    const { count, pitchMillimetres } = flat as Extract<Run['flat'], { kind: 'straight' }>;
    const half = ((count - 1) * pitchMillimetres) / 2;
    const turned = edited(moved, {
      kind: 'turn-runs',
      side: 'flat',
      runs: ['strip'],
      about: [start[0] + half, start[1]],
      degrees: 15,
    });
    expect(now).toEqual(turned);

    await onTable(page, 'flat', 'strip').focus();
    await page.keyboard.press('Control+d');
    await eventually(() => page.getByLabel('Name of the run').inputValue()).toBe('strip 2');
    await page.keyboard.press('Escape');
    await onTable(page, 'flat', 'strip 2').focus();
    await page.keyboard.press('Delete');
    expect(await onTable(page, 'flat', 'strip 2').count()).toBe(0);
    expect(await pieceOn(page)).toEqual(turned);

    // What is in use is asked about first.
    await onTable(page, 'flat', 'rim').focus();
    await page.keyboard.press('Delete');
    const question = page.getByRole('alertdialog');
    expect(await question.innerText()).toContain('Drift');
    await page.keyboard.press('Shift+Tab');
    await page.keyboard.press('Enter');
    expect(await pieceOn(page)).toEqual(edited(turned, removeRun(turned, 'rim')));
    await page.keyboard.press('Control+z');
    expect(await pieceOn(page)).toEqual(turned);
  });

  test('L4 a strip drawn by hand is there while it grows; Escape takes it away', async () => {
    const page = await openPlace(house());
    await page.getByLabel('by hand').check();
    await page.getByRole('button', { name: 'Strip', exact: true }).click();
    const box = (await table(page, 'flat').boundingBox())!;
    const from = { x: box.x + 60, y: box.y + 120 };
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x + 150, from.y + 3);
    await onTable(page, 'flat', 'strip').waitFor({ state: 'attached' });
    await page.keyboard.press('Escape');
    await onTable(page, 'flat', 'strip').waitFor({ state: 'detached' });
    await page.mouse.up();
    expect(await undo(page).isDisabled()).toBe(true);

    await drag(page, from, { x: from.x + 150, y: from.y + 3 });
    const { flat } = runOf(await pieceOn(page), 'strip');
    expect(flat).toMatchObject({ kind: 'straight', directionDegrees: 0, pitchMillimetres: 33.33 });
    expect(await nextUndo(page)).toBe('Undo: Add run strip');
  });

  test('L11 L13 a run moved on the body has a worn place of its own; runs change places on the line', async () => {
    const page = await openPlace(house());
    await page.getByRole('button', { name: 'Arc', exact: true }).click();
    const pale = onTable(page, 'worn', 'arc');
    expect(await pale.getAttribute('data-borrowed')).toBe('true');
    expect(await table(page, 'worn').innerText()).toContain('Move it to give it a worn place of its own');
    await pale.focus();
    await page.keyboard.press('ArrowDown');
    expect(await pale.getAttribute('data-borrowed')).toBe('false');
    const laid = edited(parasol, layInRoom(parasol, 'arc'));
    const moved: Edit = { kind: 'move-runs', side: 'worn', runs: ['arc'], by: [0, -1] };
    expect(await pieceOn(page)).toEqual(edited(laid, moved));
    await undo(page).click();
    await undo(page).click();
    const order = async () => page.locator('.order-name').allInnerTexts();
    const before = await order();
    const grip = (name: string) => page.locator('.line-order li', { hasText: name }).locator('.grip');
    await drag(page, await middleOf(grip('tentacle 2')), await middleOf(grip('rim')));
    expect(await order()).toEqual(['tentacle 2', 'rim', 'tentacle 1', ...before.slice(3)]);
    expect(await nextUndo(page)).toBe('Undo: Reorder run tentacle 2');
    await page.getByRole('button', { name: 'rim later in the line' }).click();
    const names = (await pieceOn(page)).lines[0]!.runs.map(({ name }) => name);
    expect(names.slice(0, 3)).toEqual(['tentacle 2', 'tentacle 1', 'rim']);
    await undo(page).click();
    await undo(page).click();
    expect(await order()).toEqual(before);
  });

  test('L12 at every size nothing lies beside the page, and axe finds nothing', async () => {
    const page = await openPlace(house());
    await page.getByRole('button', { name: 'Grid', exact: true }).click();
    await page.getByText('Place on the bench').click();
    for (const size of Object.values(sizes)) {
      await page.setViewportSize(size);
      expect(await axeFindings(page)).toEqual([]);
      const overhang = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      expect(overhang).toBeLessThanOrEqual(0);
    }
  });
}
