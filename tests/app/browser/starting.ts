/** A piece from first answers, work that comes back, the large picture, and questions. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { type Answers, firstAnswers, usualAnswers } from '../../../app/web/start/answers.ts';
import { loadPiece } from '../../../engine/piece/load.ts';
import { newPiece } from '../../../engine/piece/new-piece.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import { axeFindings } from './axe.ts';
import { samplePiece, scoreOf } from './samples.ts';
import { eventually, type House, lastHeard, openSample, sizes, untilTold, visit } from './visit.ts';

const parasol = samplePiece('jellyfish-parasol');
const hat = samplePiece('ferrymans-hat');

const pieceName = (page: Page) => page.locator('.piece-name b').innerText();

async function saved(page: Page): Promise<Piece | undefined> {
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save', exact: true }).click(),
  ]);
  return loadPiece(readFileSync(await file.path(), 'utf8')).value;
}

/** Goes on by Tab until the control of that name has the focus. */
async function tabTo(page: Page, name: string): Promise<void> {
  for (let steps = 0; steps < 60; steps++) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => {
      const element = document.activeElement;
      const input = element instanceof HTMLInputElement ? element : null;
      return (input?.labels?.[0]?.textContent ?? element?.textContent ?? '').trim();
    });
    if (at === name) return;
  }
  throw new Error(`"${name}" is not reached by Tab.`);
}

/** An edit by hand. */
async function startBrighter(page: Page): Promise<void> {
  await page.getByRole('slider', { name: 'Brightness' }).fill('200');
  await page.getByRole('button', { name: 'start here' }).click();
  await eventually(() => page.locator('.piece-name').innerText()).toContain('not saved');
}

export function testStarting(house: () => House): void {
  test('H1 a piece of one’s own by pointer is the piece of its answers', async () => {
    const { page, complaints } = await visit(house());
    await page.getByRole('button', { name: 'Make your own' }).click();
    await page.getByRole('radio', { name: 'A strip' }).check();
    await page.getByLabel('Length', { exact: true }).fill('1.2');
    await page.getByLabel('Pixels a metre').selectOption('30');
    await page.getByRole('radio', { name: 'Power bank' }).check();
    expect(await page.getByLabel('Watch out').innerText()).toContain('Lithium');
    await page.getByLabel('It gives').fill('2.1');
    await page.getByLabel('Call it').fill('Reed lantern');
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Put it on the bench' }).click();
    await eventually(() => pieceName(page)).toBe('Reed lantern');
    expect(await page.locator('.next-step').innerText()).toContain('Nothing shines yet');
    const answers: Answers = {
      ...usualAnswers,
      name: 'Reed lantern',
      light: 'strip',
      metres: 1.2,
      perMetre: 30,
      supply: 'bank',
      milliamps: 2100,
    };
    expect(await saved(page)).toEqual(newPiece(firstAnswers(answers)));
    expect(complaints).toEqual([]);
  });

  test('H1 by keyboard alone, all answers as they are', async () => {
    const { page } = await visit(house(), { viewport: sizes.laptop });
    await tabTo(page, 'New piece');
    await page.keyboard.press('Enter');
    await page.getByRole('dialog').waitFor();
    await tabTo(page, 'A ring');
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    await tabTo(page, 'Call it');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('Buoy');
    await page.keyboard.press('Enter');
    await eventually(() => pieceName(page)).toBe('Buoy');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    const piece = newPiece(firstAnswers({ ...usualAnswers, name: 'Buoy', light: 'pixels' }));
    expect(await saved(page)).toEqual(piece);
  });

  test('H2 a reload brings unsaved work back with its steps; H3 it is not let go of unasked', async () => {
    const { page } = await visit(house());
    await openSample(page, 'ferrymans-hat', hat.name);
    await startBrighter(page);
    await page.reload();
    await eventually(() => page.locator('.piece-name').innerText()).toContain('taken up again from');
    expect(await pieceName(page)).toBe(hat.name);
    expect(await page.locator('.piece-name').innerText()).toContain('not saved');

    const sample = 'samples/moth-wings.piece.json';
    await page.setInputFiles('input[type="file"]', sample);
    await page.getByRole('button', { name: 'Stay with it' }).click();
    await page.getByRole('dialog').waitFor({ state: 'hidden' });
    expect(await pieceName(page)).toBe(hat.name);

    await page.getByRole('button', { name: /^Undo/ }).click();
    expect(await saved(page)).toEqual(hat);
    await page.setInputFiles('input[type="file"]', sample);
    await eventually(() => pieceName(page)).toBe(samplePiece('moth-wings').name);
  });

  test('H4 the large picture is alone in the window; number keys press, Escape comes back', async () => {
    const { page } = await visit(house());
    await page.keyboard.press('l');
    const pane = page.locator('.picture');
    await eventually(async () => (await pane.boundingBox())?.width).toBe(sizes.desk.width);
    expect(await page.locator('header.house').evaluate((header: HTMLElement) => header.inert)).toBe(true);
    for (const button of await page.locator('.piece-button button').all()) {
      expect((await button.boundingBox())!.width).toBeGreaterThanOrEqual(120);
    }
    await page.keyboard.press('1', { delay: 120 });
    await untilTold(page, `Look: ${parasol.looks[1]!.name}.`);
    await page.keyboard.press('Escape');
    await eventually(async () => (await pane.boundingBox())!.width).toBeLessThan(sizes.desk.width);
    expect(await page.locator('header.house').evaluate((header: HTMLElement) => header.inert)).toBe(false);
  });

  test('H5 H7 a figure is asked what it is made of, by key; H8 a pixel says which it is', async () => {
    const { page } = await visit(house());
    const question = page.getByRole('button', { name: 'What is “peak” made of?' });
    await question.focus();
    await page.keyboard.press('Enter');
    const answer = page.getByRole('dialog', { name: 'What is “peak” made of?' });
    await answer.waitFor();
    await eventually(() => answer.innerText()).toContain(`${scoreOf(parasol).pixels.length} at 0.7 mA`);
    expect(await axeFindings(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await answer.waitFor({ state: 'detached' });
    expect(await question.evaluate((button) => button === document.activeElement)).toBe(true);

    await page.getByRole('slider', { name: 'Point at a pixel' }).focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('.pixel-words').innerText()).toBe('rim, pixel 1');
    const { x, y } = (await page.locator('.picture-canvas').boundingBox())!;
    const words = page.locator('.pixel-words');
    const { left, top } = await words.evaluate((element: HTMLElement) => ({
      left: Number.parseFloat(element.style.left),
      top: Number.parseFloat(element.style.top),
    }));
    await page.mouse.move(x + left + 1, y + top - 1);
    await page.locator('.thread').hover();
    await words.waitFor({ state: 'detached' });
    await page.mouse.move(x + left + 1, y + top - 1);
    expect(await words.innerText()).toBe('rim, pixel 1');
  });

  test('H9 one track by itself leaves all other pixels dark', async () => {
    const { page } = await visit(house());
    const track = parasol.looks[0]!.tracks.findIndex(({ name }) => name === 'rim');
    await page.getByLabel('shows').selectOption({ label: parasol.looks[0]!.tracks[track]!.name! });
    const { pixels } = scoreOf(parasol);
    const litRuns = async () => {
      const { drive } = await lastHeard(page);
      const lit = pixels.filter((_, i) => drive.slice(3 * i, 3 * i + 3).some((byte) => byte > 0));
      return [...new Set(lit.map(({ run }) => run))];
    };
    await eventually(litRuns).toEqual([0]);
    await page.getByLabel('shows').selectOption('all of it');
    await eventually(async () => (await litRuns()).length).toBeGreaterThan(3);
  });
}
