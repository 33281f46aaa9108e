import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { layAtHand, layOnRun } from '../../../app/web/swatches/laying.ts';
import type { Edit } from '../../../engine/edit/edit.ts';
import { blankLook } from '../../../engine/edit/offers/blank-look.ts';
import { libraryPatterns } from '../../../engine/pattern/library.ts';
import { axeFindings } from './axe.ts';
import { afterEdits, pieceOn } from './piece.ts';
import { samplePiece } from './samples.ts';
import { eventually, type House, sizes, stillVisit, visit } from './visit.ts';

const parasol = samplePiece('jellyfish-parasol');
const names = parasol.looks.map(({ name }) => name);

const looksInHand = (page: Page) => page.getByRole('navigation', { name: 'Looks' });
const bead = (page: Page, name: string) => looksInHand(page).getByRole('button', { name, exact: true });
const card = (page: Page, title: string) =>
  page.locator('.swatch-card .lay', { has: page.locator(`b:text-is("${title}")`) });

async function openBook(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Swatches' }).click();
  await page.locator('.swatch-card').first().waitFor();
}

/** Takes what lies there and lets go of it over the other, at a share of its width and height. */
async function carry(page: Page, from: Locator, to: Locator, x = 0.5, y = 0.5): Promise<void> {
  const [start, end] = [(await from.boundingBox())!, (await to.boundingBox())!];
  await page.mouse.move(start.x + start.width / 2, start.y + start.height / 3);
  await page.mouse.down();
  await page.mouse.move(start.x + start.width / 2, start.y - 30, { steps: 3 });
  await page.mouse.move(end.x + end.width * x, end.y + end.height * y, { steps: 4 });
}

export function testSwatching(house: () => House): void {
  test('B1 B2 B3 swatches are found by words, drawn, weighed, and laid by Enter', async () => {
    const { page } = await stillVisit(house());
    await openBook(page);
    expect(await page.locator('.swatch-card').count()).toBe(libraryPatterns.length + parasol.patterns.length);
    await page.getByLabel('Search the swatches').fill('wat mill');
    await eventually(() => page.locator('.swatch-card b').allInnerTexts()).toEqual(['Millrace']);
    await page.locator('.swatch-cloth[data-drawn="true"]').waitFor();
    await eventually(() => page.locator('.swatch-card .weights').innerText()).toMatch(/[\d.]+ ms\s+\d+ mA/);

    await page.getByLabel('Search the swatches').fill('');
    const titles = await page.locator('.swatch-card b').allInnerTexts();
    await card(page, titles[0]!).focus();
    await page.keyboard.press('ArrowRight');
    expect(await card(page, titles[1]!).evaluate((element) => element === document.activeElement)).toBe(true);
    await card(page, 'Dew').press('Enter');
    const laying = layAtHand(parasol, 'dew/1', {
      look: 0,
      ms: 0,
      selected: { look: 0, track: 0, clip: 0 },
    });
    expect(await pieceOn(page)).toEqual(afterEdits(parasol, laying!.edit));
    await page.getByRole('button', { name: /^Undo/ }).click();

    await page.getByRole('button', { name: 'Start a pattern of my own from Tide' }).click({ force: true });
    await eventually(async () => (await pieceOn(page)).patterns.map(({ name }) => name)).toEqual([
      ...parasol.patterns.map(({ name }) => name),
      'my tide',
    ]);
    expect(await axeFindings(page)).toEqual([]);
  });

  test('B3 B4 a swatch that is carried to the picture or the loom is laid where it is let go of', async () => {
    const { page } = await stillVisit(house());
    await openBook(page);
    const picture = page.locator('[data-takes-swatch="picture"]');
    await carry(page, card(page, 'Still'), picture, 0.5, 0.02);
    expect(await page.locator('.swatch-ghost').count()).toBe(1);
    await page.mouse.up();
    const laying = layOnRun(parasol, 'still/1', parasol.lines[0]!.runs[0]!.name, { look: 0, ms: 0 });
    expect(await pieceOn(page)).toEqual(afterEdits(parasol, laying!.edit));
    expect(await page.locator('.swatch-ghost').count()).toBe(0);

    await page.getByRole('button', { name: /^Undo/ }).click();
    const warp = page.locator('[data-takes-swatch="track"]').nth(1);
    await carry(page, card(page, 'Still'), warp, 0.5, 0.1);
    await page.mouse.up();
    const { looks } = await pieceOn(page);
    const clips = looks[0]!.tracks.flatMap((track) => track.clips);
    const had = parasol.looks[0]!.tracks.flatMap((track) => track.clips);
    expect(clips.filter(({ pattern }) => pattern === 'still/1')).toHaveLength(1);
    expect(clips.filter(({ pattern }) => pattern !== 'still/1')).toEqual(had);
    await page.getByRole('button', { name: /^Undo/ }).click();

    // Let go of over nothing, or given up, it lies in the book as before.
    await carry(page, card(page, 'Still'), page.locator('header.house'));
    await page.mouse.up();
    await carry(page, card(page, 'Still'), picture);
    await page.keyboard.press('Escape');
    await page.mouse.up();
    expect(await pieceOn(page)).toEqual(parasol);
  });

  test('B6 looks are added, renamed and reordered by keyboard and by pointer', async () => {
    const { page } = await stillVisit(house());
    await looksInHand(page).getByRole('button', { name: 'New look' }).first().click();
    await page.locator('.swatch[aria-current="true"]', { hasText: 'Look 7' }).waitFor();
    await page.locator('.swatch-card').first().waitFor();
    const added = blankLook(parasol, 'Look 7');
    const first = page.locator('.swatch', { hasText: 'Look 7' });
    await first.press('F2');
    await page.getByLabel('Name of Look 7').fill('Lantern walk');
    await page.keyboard.press('Enter');
    const renamed: Edit = { kind: 'rename-look', look: 'Look 7', name: 'Lantern walk' };
    await bead(page, 'Lantern walk').press('Alt+ArrowLeft');
    const byKey: Edit = { kind: 'reorder-look', look: 'Lantern walk', to: names.length - 1 };
    const before = afterEdits(parasol, added, renamed, byKey);
    await eventually(() =>
      bead(page, 'Lantern walk').evaluate((element) => element === document.activeElement),
    ).toBe(true);
    expect(await pieceOn(page)).toEqual(before);

    await looksInHand(page).evaluate((thread) => thread.scrollTo(0, 0));
    const [from, to] = await Promise.all(
      [bead(page, names[0]!), bead(page, names[2]!)].map((one) => one.boundingBox()),
    );
    await page.mouse.move(from!.x + 50, from!.y + 30);
    await page.mouse.down();
    await page.mouse.move(to!.x + 70, to!.y + 30, { steps: 6 });
    await page.mouse.up();
    const drawn = afterEdits(before, { kind: 'reorder-look', look: names[0]!, to: 2 });
    expect(await pieceOn(page)).toEqual(drawn);
    await page.getByRole('button', { name: /^Undo/ }).click();
    expect(await pieceOn(page)).toEqual(before);
  });

  test('B7 length, dissolve and timer are set at the bead, and what goes with a look is told', async () => {
    const { page } = await stillVisit(house());
    await page.getByRole('button', { name: `More of ${names[0]}` }).click();
    await page.getByLabel('Dissolves in over').fill('1.2');
    await page.getByLabel('Dissolves in over').press('Enter');
    await page.getByLabel('Moves on by itself').check();
    await page.getByLabel('after', { exact: true }).fill('12.5');
    await page.getByLabel('after', { exact: true }).press('Enter');
    await page.getByLabel('to', { exact: true }).selectOption(names[3]!);
    const timed = afterEdits(parasol, {
      kind: 'set-look',
      look: names[0]!,
      set: { dissolveMilliseconds: 1200, moveOn: { afterMilliseconds: 12_500, to: names[3]! } },
    });
    expect(await page.locator('.card-removal').innerText()).toContain('The hold of ferrule will do nothing.');
    expect(await axeFindings(page)).toEqual([]);
    await page.keyboard.press('Escape');
    expect(await pieceOn(page)).toEqual(timed);
    await page.locator('.lead[data-kind="jump"]', { hasText: 'after 12.5 s' }).waitFor();
  });

  test('B8 B9 buttons are edited, tried at once on the picture, and say what comes of it', async () => {
    const { page } = await stillVisit(house());
    await page.getByRole('button', { name: 'Change buttons' }).click();
    const editor = page.getByRole('region', { name: 'Buttons of the piece' });
    const handle = editor.getByRole('group', { name: 'Button handle' });
    await handle.getByLabel('Press', { exact: true }).selectOption({ label: `go to ${names[4]}` });
    await handle.getByLabel('Press twice').selectOption({ label: 'pause, and go on' });
    await eventually(() => handle.locator('.consequence').innerText()).toContain('300 ms after you let go');
    await page.getByRole('button', { name: 'Play' }).click();
    await page.locator('.piece-button button', { hasText: 'handle' }).click();
    await page.locator('.swatch[aria-current="true"]', { hasText: names[4]! }).waitFor();
    await editor.getByRole('button', { name: 'Add a button' }).click();
    await eventually(() => page.locator('.piece-button').count()).toBe(3);
    expect(await axeFindings(page)).toEqual([]);
    await page.keyboard.press('Escape');
    expect(await editor.count()).toBe(0);
    const { controls } = await pieceOn(page);
    expect(controls.buttons[0]).toMatchObject({
      press: { do: 'go-to-look', look: names[4] },
      double: { do: 'pause' },
    });
  });

  test('B3 at the width of a phone the book leaves half of the page, and a tap lays a swatch', async () => {
    const { page } = await visit(house(), { viewport: sizes.phone, hasTouch: true, reducedMotion: 'reduce' });
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
    await openBook(page);
    const box = (await page.locator('.swatch-drawer').boundingBox())!;
    expect(box.y + box.height).toBeLessThanOrEqual(sizes.phone.height);
    expect(box.height).toBeLessThan(sizes.phone.height / 2);
    await card(page, 'Still').tap();
    await eventually(() => page.getByRole('button', { name: /^Undo/ }).getAttribute('aria-label')).toBe(
      'Undo: Add Still',
    );
    expect(await axeFindings(page)).toEqual([]);
  });
}
