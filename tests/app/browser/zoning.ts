import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { applyEdit } from '../../../engine/edit/apply.ts';
import { newZone } from '../../../engine/edit/offers/add-zone.ts';
import { sourceOfPixels } from '../../../engine/edit/offers/zone-of-pixels.ts';
import { pixelPlaces } from '../../../engine/layout/shapes.ts';
import { axeFindings } from './axe.ts';
import { pieceOn } from './piece.ts';
import { samplePiece } from './samples.ts';
import { eventually, type House, sizes, visit } from './visit.ts';

const parasol = samplePiece('jellyfish-parasol');

async function openPlace(house: House, viewport = sizes.desk): Promise<Page> {
  const { page } = await visit(house, { viewport, reducedMotion: 'reduce' });
  await page.getByRole('button', { name: 'Place', exact: true }).click();
  await page.locator('.surface .run').first().waitFor();
  return page;
}

const section = (page: Page, title: string) =>
  page.locator('.place-tag details', { has: page.locator('summary', { hasText: title }) });

async function unfold(page: Page, title: string): Promise<void> {
  const found = section(page, title).first();
  if ((await found.getAttribute('open')) === null) await found.locator('summary').first().click();
}

/** Where points of the flat table, in millimetres, stand in the window. */
async function seenOn(page: Page, points: readonly (readonly [number, number])[]) {
  const matrix = await page.locator('.surface[data-side="flat"] .runs').getAttribute('transform');
  const [a, , , d, e, f] = /matrix\(([^)]+)\)/
    .exec(matrix!)![1]!
    .split(/[\s,]+/)
    .map(Number);
  const box = (await page.locator('.surface[data-side="flat"] > svg').boundingBox())!;
  return points.map(([x, y]) => ({ x: box.x + a! * x + e!, y: box.y + d! * y + f! }));
}

const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="30cm" height="20cm" viewBox="0 0 600 400">
  <g transform="translate(40 30) rotate(12)"><g transform="scale(1.200 0.900)">
    <path id="wing" d="M0 200 C0 50 150 -20 200 80 S350 20 340 160 Q300 260 180 220 T60 240 a40 30 20 0 1 -40 -40 h-10"/>
  </g></g></svg>`;

export function testZoning(house: () => House): void {
  test('L29 a lasso by hand makes the zone that the engine makes of the pixels inside; undo takes it back', async () => {
    const page = await openPlace(house());
    await unfold(page, 'Zones');
    await page.getByRole('button', { name: 'Lasso', exact: true }).click();
    // Around the upper part of the first two tentacles.
    const runs = parasol.lines[0]!.runs.slice(1, 3);
    const caught = runs.flatMap((run) =>
      pixelPlaces(run.flat)
        .slice(0, 5)
        .map((at, position) => ({ run: run.name, position, at })),
    );
    const xs = caught.map(({ at }) => at.x);
    const ys = caught.map(({ at }) => at.y);
    const room = 8;
    const [left, right] = [Math.min(...xs) - room, Math.max(...xs) + room];
    const [bottom, top] = [Math.min(...ys) - room, Math.max(...ys) + room];
    const corners = await seenOn(page, [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ]);
    await page.mouse.move(corners[0]!.x, corners[0]!.y);
    await page.mouse.down();
    for (const { x, y } of corners.slice(1)) await page.mouse.move(x, y, { steps: 4 });
    await page.mouse.up();

    const source = sourceOfPixels(parasol, caught)!;
    const expected = applyEdit(parasol, newZone(parasol, source, 'zone')).value!.piece;
    await page.getByRole('textbox', { name: 'Name', exact: true }).waitFor();
    expect(await pieceOn(page)).toEqual(expected);
    expect(await page.locator('.zone-route .first').count()).toBeGreaterThan(0);
    expect(await axeFindings(page)).toEqual([]);
    await page.getByRole('button', { name: /^Undo/ }).click();
    expect(await pieceOn(page)).toEqual(parasol);
  });

  test('L29 by keys alone: a zone is made, named, given its parts and its way, and removed', async () => {
    const page = await openPlace(house());
    await unfold(page, 'Zones');
    const press = async (name: string | RegExp) => {
      await page.getByRole('button', { name }).focus();
      await page.keyboard.press('Enter');
    };
    await press('New zone');
    const name = page.getByRole('textbox', { name: 'Name', exact: true });
    await name.focus();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('half the lot');
    await page.keyboard.press('Enter');
    const every = page.getByRole('spinbutton', { name: 'Every' });
    await every.focus();
    await page.keyboard.press('ControlOrMeta+a');
    await page.keyboard.type('2');
    await page.getByRole('checkbox', { name: 'Other way round' }).focus();
    await page.keyboard.press('Space');
    await eventually(async () => (await pieceOn(page)).zones.at(-1)).toEqual({
      name: 'half the lot',
      source: { kind: 'reversed', of: { kind: 'stepped', of: { kind: 'all' }, every: 2, offset: 0 } },
    });
    await page.locator('.zone-form').getByRole('button', { name: 'Remove', exact: true }).focus();
    await page.keyboard.press('Enter');
    expect(await pieceOn(page)).toEqual(parasol);
  });

  test('L26 single pixels are cut out and hidden by the keys of small toggles', async () => {
    const page = await openPlace(house());
    const run = parasol.lines[0]!.runs[1]!;
    await page.locator(`.surface[data-side="flat"] [data-run="${run.name}"]`).focus();
    await page.keyboard.press('Enter');
    await unfold(page, 'Single pixels');
    await page.getByRole('button', { name: 'Pixel 0, lit' }).focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Pixel 1, cut out' }).waitFor();
    await page.getByRole('radio', { name: 'hide' }).check();
    await page.getByRole('button', { name: 'Pixel 1, cut out' }).focus();
    await page.keyboard.press('ArrowRight');
    await page.keyboard.press('Space');
    await page.getByRole('button', { name: 'Pixel 2, hidden' }).waitFor();
    const after = (await pieceOn(page)).lines[0]!.runs[1]!;
    expect(after).toEqual({ ...run, removed: [1], hidden: [2] });
  });

  test('L30 a line of an SVG file becomes a run, its pixels where the browser measures them, and is bent by keys', async () => {
    const page = await openPlace(house());
    await page.getByRole('button', { name: 'From a drawing' }).click();
    const dialog = page.getByRole('dialog', { name: 'A run along a drawing' });
    await dialog.locator('input[type="file"]').setInputFiles({
      name: 'wing.svg',
      mimeType: 'image/svg+xml',
      buffer: Buffer.from(drawing),
    });
    await dialog.getByText('wing', { exact: true }).waitFor();
    await dialog.getByLabel('Strip with').selectOption({ label: '96 pixels a metre' });
    expect(await axeFindings(page)).toEqual([]);
    await dialog.getByRole('button', { name: 'Lay it down' }).click();
    await page.locator('.node').first().waitFor();
    const laid = (await pieceOn(page)).lines[0]!.runs.at(-1)!;
    expect(laid.name).toBe('wing');
    const places = pixelPlaces(laid.flat);
    expect(places.length).toBeGreaterThan(40);
    if (laid.flat.kind !== 'path') throw new Error('The drawing did not become a path.');

    const { start, curves, pitchMillimetres } = laid.flat;
    // The run's own curves, walked by the browser; and the drawing itself, as the browser transforms it.
    const d = `M${start}${curves.map((c) => `C${c.firstControl} ${c.secondControl} ${c.end}`).join('')}`;
    const seen = await page.evaluate(
      ({ d, drawing, pitch, count }) => {
        const path = document.createElementNS('http://www.w3.org/2000/svg', 'path');
        path.setAttribute('d', d);
        const steps = Array.from({ length: count }, (_, i) => path.getPointAtLength(i * pitch));
        const holder = document.createElement('div');
        holder.innerHTML = drawing;
        document.body.append(holder);
        const wing = holder.querySelector('path')!;
        const matrix = holder.querySelector('svg')!.getScreenCTM()!.inverse().multiply(wing.getScreenCTM()!);
        const length = wing.getTotalLength();
        const shape = Array.from({ length: 4001 }, (_, i) => {
          const { x, y } = wing.getPointAtLength((i * length) / 4000).matrixTransform(matrix);
          return [x / 2, -y / 2] as const;
        });
        holder.remove();
        return { length: path.getTotalLength(), steps: steps.map(({ x, y }) => [x, y] as const), shape };
      },
      { d, drawing, pitch: pitchMillimetres, count: places.length },
    );
    for (const [i, { x, y }] of places.entries()) {
      expect(Math.hypot(x - seen.steps[i]![0], y - seen.steps[i]![1])).toBeLessThan(0.1);
    }
    expect(places.length).toBe(1 + Math.floor(seen.length / pitchMillimetres));
    // 600 units are 30 cm. Where the drawing was laid is taken out by its first point.
    const [firstX, firstY] = seen.shape[0]!;
    for (const { x, y } of places) {
      const [px, py] = [x - start[0] + firstX, y - start[1] + firstY];
      const away = Math.min(...seen.shape.map(([sx, sy]) => Math.hypot(px - sx, py - sy)));
      expect(away).toBeLessThan(0.1);
    }

    await page
      .getByRole('button', { name: /^Node 2 of/ })
      .first()
      .focus();
    await page.keyboard.press('Shift+ArrowUp');
    await eventually(async () => {
      const { flat } = (await pieceOn(page)).lines[0]!.runs.at(-1)!;
      return flat.kind === 'path' && Math.round((flat.curves[0]!.end[1] - curves[0]!.end[1]) * 100) / 100;
    }).toBe(10);
    await page.getByRole('button', { name: /^Undo: Bend run wing/ }).click();
    expect((await pieceOn(page)).lines[0]!.runs.at(-1)).toEqual(laid);
  });

  test('L27 a picture underneath is scaled by a known length, is back after a reload, and is in no file', async () => {
    const page = await openPlace(house());
    await unfold(page, 'Garment underneath');
    await page.getByLabel('Picture of the garment').setInputFiles({
      name: 'coat.svg',
      mimeType: 'image/svg+xml',
      buffer: Buffer.from(
        '<svg xmlns="http://www.w3.org/2000/svg" width="400" height="300"><rect x="50" y="50" width="200" height="9"/></svg>',
      ),
    });
    await page.locator('.surface[data-side="flat"] image.garment').waitFor();
    await page.getByRole('button', { name: 'Mark a known length' }).click();
    // A quarter to three quarters of the picture: 200 of its pixels.
    await page.getByRole('spinbutton', { name: /^The line is/ }).fill('500');
    const scale = page.getByRole('spinbutton', { name: /^one picture pixel/ });
    await eventually(() => scale.inputValue()).toBe('2.5');
    expect(await pieceOn(page)).toEqual(parasol);
    expect(await axeFindings(page)).toEqual([]);

    await eventually(() =>
      page.evaluate(
        () =>
          new Promise((resolve) => {
            const opening = indexedDB.open('weftlight', 1);
            opening.onsuccess = () => {
              const all = opening.result.transaction('garments').objectStore('garments').getAll();
              all.onsuccess = () => resolve(all.result[0]?.placing.millimetresPerPixel);
            };
          }),
      ),
    ).toBe(2.5);
    await page.reload();
    await page.getByRole('button', { name: 'Place', exact: true }).click();
    await page.locator('.surface[data-side="flat"] image.garment').waitFor();
  });
}
