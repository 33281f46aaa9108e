/** Clips under the hand, by pointer and by keys. Rules M of app/web/SPEC.md. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { axeFindings } from './axe.ts';
import { afterEdits, pieceOn } from './piece.ts';
import { samplePiece } from './samples.ts';
import { eventually, type House, stillVisit, untilTold } from './visit.ts';

const parasol = samplePiece('jellyfish-parasol');
const look = parasol.looks[0]!;
/** Wake on the undertow, from 4 to 20 s of 24, the only clip of the third track. */
const at = { look: look.name, track: 2, clip: 0 };
const wake = look.tracks[2]!.clips[0]!;

const clipOn = (page: Page, track: number, clip: number) =>
  page.locator(`.clip[data-clip="0.${track}.${clip}"]`);
const nextUndo = (page: Page) => page.getByRole('button', { name: /^Undo/ }).getAttribute('aria-label');

/** Pixels of the page for a time of the look. */
async function pixelsOf(page: Page, milliseconds: number): Promise<number> {
  const { height } = (await page.locator('.loom-bed').boundingBox())!;
  return (milliseconds / look.lengthMilliseconds) * height;
}

async function pull(page: Page, from: { x: number; y: number }, by: { x?: number; y?: number }) {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  for (let step = 1; step <= 6; step++) {
    await page.mouse.move(from.x + ((by.x ?? 0) * step) / 6, from.y + ((by.y ?? 0) * step) / 6);
  }
  await page.mouse.up();
}

export function testWeaving(house: () => House): void {
  test('M1 M2 a clip is pulled, trimmed and faded by the pointer, each in one step', async () => {
    const { page } = await stillVisit(house());
    const clip = clipOn(page, 2, 0);
    const middle = async () => {
      const { x, y, width, height } = (await clip.boundingBox())!;
      return { x: x + width / 3, y: y + height / 2, top: y, bottom: y + height };
    };
    const second = await pixelsOf(page, 1000);
    await pull(page, await middle(), { y: -2 * second });
    await eventually(() => nextUndo(page)).toBe('Undo: Move Wake');

    const { x, bottom } = await middle();
    await pull(page, { x, y: bottom - 3 }, { y: -4 * second });
    await eventually(() => nextUndo(page)).toBe('Undo: Trim Wake');

    const corner = (await clip.locator('[data-grip="fade-out"]').boundingBox())!;
    await pull(page, { x: corner.x + 7, y: corner.y + 7 }, { y: -second });
    await eventually(() => nextUndo(page)).toBe('Undo: Set fade-out of Wake');

    const length = wake.lengthMilliseconds - 4000;
    const { fadeOutMilliseconds } = (await pieceOn(page)).looks[0]!.tracks[2]!.clips[0]!;
    expect(Math.abs(fadeOutMilliseconds - (wake.fadeOutMilliseconds + 1000))).toBeLessThan(200);
    const wanted = afterEdits(
      parasol,
      { kind: 'move-clip', at, to: at, startMilliseconds: wake.startMilliseconds - 2000 },
      {
        kind: 'trim-clip',
        at,
        startMilliseconds: wake.startMilliseconds - 2000,
        lengthMilliseconds: length,
      },
      { kind: 'set-clip', at, set: { fadeOutMilliseconds } },
    );
    expect(await pieceOn(page)).toEqual(wanted);
    for (let step = 0; step < 3; step++) await page.getByRole('button', { name: /^Undo/ }).click();
    expect(await pieceOn(page)).toEqual(parasol);
  });

  test('M2 M3 keys move, trim, fade, split, copy and remove a clip, and take it to another look', async () => {
    const { page } = await stillVisit(house());
    const clip = clipOn(page, 2, 0);
    await clip.focus();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowUp');
    await untilTold(page, '3.8 s to 19.8 s');
    await page.keyboard.press('Alt+PageUp');
    await page.keyboard.press('i');
    await untilTold(page, '3.8 s to 18.8 s');
    const start = wake.startMilliseconds - 200;
    const length = wake.lengthMilliseconds - 1000;
    const shaped = afterEdits(
      parasol,
      { kind: 'move-clip', at, to: at, startMilliseconds: start },
      { kind: 'trim-clip', at, startMilliseconds: start, lengthMilliseconds: length },
      { kind: 'set-clip', at, set: { fadeInMilliseconds: wake.fadeInMilliseconds + 100 } },
    );
    expect(await pieceOn(page)).toEqual(shaped);

    const shuttle = page.locator('.shuttle');
    const now = async () => Number(await shuttle.getAttribute('aria-valuenow'));
    let atMilliseconds = await now();
    while (atMilliseconds < 8000) {
      await shuttle.press('PageDown');
      await eventually(now).toBeGreaterThan(atMilliseconds);
      atMilliseconds = await now();
    }
    await clip.focus();
    await page.keyboard.press('s');
    await untilTold(page, 'Split in two.');
    expect(await pieceOn(page)).toEqual(afterEdits(shaped, { kind: 'split-clip', at, atMilliseconds }));

    await clipOn(page, 2, 1).focus();
    await page.keyboard.press('Delete');
    await clipOn(page, 2, 0).focus();
    await page.keyboard.press('Control+c');
    await page.locator('.swatch').nth(1).click();
    await eventually(() => page.locator('.loom').getAttribute('aria-label')).toBe(
      `Loom: ${parasol.looks[1]!.name}`,
    );
    await page.locator('.clip').first().focus();
    await page.keyboard.press('Control+v');
    await untilTold(page, 'Pasted.');
    const { looks } = await pieceOn(page);
    const all = looks[1]!.tracks
      .flatMap(({ clips }) => clips)
      .filter(({ pattern }) => pattern === wake.pattern);
    const had = parasol.looks[1]!.tracks.flatMap(({ clips }) => clips);
    expect(all).toHaveLength(had.filter(({ pattern }) => pattern === wake.pattern).length + 1);
    expect(all.at(-1)).toMatchObject({ zone: wake.zone, parameters: wake.parameters });
  });

  test('M2 a track is added, named, moved and removed at its head; a clip goes there by keys', async () => {
    const { page } = await stillVisit(house());
    await page.getByRole('button', { name: 'Add a track on top' }).click();
    await page.locator('.track-head button', { hasText: 'track 4' }).click();
    const card = page.getByRole('dialog', { name: 'track 4' });
    await card.getByLabel('Name').fill('reeds');
    await card.getByLabel('Name').press('Enter');
    await clipOn(page, 2, 0).focus();
    await page.keyboard.press('ArrowRight');
    await eventually(() => page.evaluate(() => document.activeElement?.getAttribute('data-clip'))).toBe(
      '0.3.0',
    );
    await page.locator('.track-head button', { hasText: 'reeds' }).click();
    await page.getByRole('button', { name: 'Lower' }).click();

    const top = { look: look.name, track: 3 };
    const wanted = afterEdits(
      parasol,
      { kind: 'add-track', at: top, track: { clips: [] } },
      { kind: 'set-track', at: top, set: { name: 'reeds' } },
      { kind: 'move-clip', at, to: { ...top, clip: 0 }, startMilliseconds: wake.startMilliseconds },
      { kind: 'reorder-track', at: top, to: 2 },
    );
    expect(await pieceOn(page)).toEqual(wanted);
    await page.locator('.track-head button').first().click();
    await page.getByRole('dialog').waitFor();
    expect(await axeFindings(page)).toEqual([]);
  });

  test('M5 a column that is pointed at is marked in the picture', async () => {
    const { page } = await stillVisit(house());
    const clip = clipOn(page, 0, 0);
    await clip.focus();
    await page.keyboard.press('.');
    await page.keyboard.press('.');
    await page.keyboard.press(',');
    const box = (await clip.boundingBox())!;
    await page.mouse.move(box.x + box.width / 4, box.y + 20);
    const picture = page.getByRole('slider', { name: 'Point at a pixel' });
    await eventually(() => picture.getAttribute('aria-valuetext')).toMatch(/rim/);
  });
}
