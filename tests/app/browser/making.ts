/** A piece from nothing, by a hand that has read nothing: made, saved, rehearsed and copied. Rules P of SPEC.md. */
import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { rehearse } from '../../../codegen/rehearse/rehearse.ts';
import { loadPiece } from '../../../engine/piece/load.ts';
import type { Clip, Piece } from '../../../engine/piece/schema.ts';
import { scoreOf } from './samples.ts';
import { eventually, type House, visit } from './visit.ts';

const strips = ['strip', 'strip 2', 'strip 3', 'strip 4'];
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });
const field = (page: Page, label: string) => page.getByLabel(label, { exact: true });
const swatch = (page: Page, pattern: string) =>
  page.getByRole('region', { name: 'Swatch book' }).getByRole('button', { name: new RegExp(`^${pattern} `) });
const clipInHand = (page: Page) => page.locator('.clip[aria-pressed="true"]');

/** A thin strip has no height of its own, which a locator takes for hidden. */
async function middleOf(thing: Locator): Promise<[x: number, y: number]> {
  return thing.evaluate((element) => {
    const { x, y, width, height } = element.getBoundingClientRect();
    return [x + width / 2, y + height / 2];
  });
}

async function drag(page: Page, from: Locator, by: readonly [x: number, y: number]): Promise<void> {
  const [x, y] = await middleOf(from);
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let step = 1; step <= 5; step++) await page.mouse.move(x + (by[0] * step) / 5, y + (by[1] * step) / 5);
  await page.mouse.up();
}

const run = (page: Page, name: string) => page.locator(`.surface[data-side="flat"] [data-run="${name}"]`);

/** The piece as the file has it, and that file. */
async function save(
  page: Page,
  ask = () => button(page, 'Save').click(),
): Promise<{ piece: Piece; file: string }> {
  const download = page.waitForEvent('download');
  await ask();
  const file = await (await download).path();
  const { value, diagnostics } = loadPiece(readFileSync(file, 'utf8'));
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  return { piece: value!, file };
}

/** What the page copies is, byte for byte, what the command writes; and the chip plays what the page showed. */
async function provePiece(page: Page): Promise<Piece> {
  const { piece, file } = await save(page);
  await button(page, 'Firmware').click();
  await button(page, 'Copy').click();
  await button(page, 'Copied').waitFor();
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  const folder = await mkdtemp(join(tmpdir(), 'weftlight-making-'));
  try {
    execFileSync(process.execPath, ['app/cli/start.mjs', 'sketch', file, '--out', folder]);
    const [written] = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
      /\.ino$/.test(name),
    );
    expect(copied).toBe(readFileSync(join(folder, written!), 'utf8'));
  } finally {
    await rm(folder, { recursive: true });
  }
  const { value: report, diagnostics } = await rehearse(scoreOf(piece), { forMilliseconds: 1500 });
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  expect(report!.mismatches).toBe(0);
  expect(report!.frames).toBeGreaterThan(20);
  return piece;
}

const clipsOf = (piece: Piece, look: number): readonly Clip[] =>
  piece.looks[look]!.tracks.flatMap(({ clips }) => clips);

export function testMaking(house: () => House): void {
  test('P1 a ring and four strips, a zone, three looks, fades, keys and buttons come from nothing by pointer', async () => {
    const { page, complaints } = await visit(house(), { permissions: ['clipboard-read', 'clipboard-write'] });
    await button(page, 'New piece').click();
    await page.getByRole('radio', { name: 'A ring' }).check();
    await page.getByRole('radio', { name: 'Mains adapter, 5 V' }).check();
    await field(page, 'Call it').fill('Ferry lamp');
    await button(page, 'There is more to lay out').click();

    for (const strip of strips) {
      await page.getByRole('toolbar', { name: 'Lay down' }).getByRole('button', { name: 'Strip' }).click();
      await eventually(() => field(page, 'Name of the run').inputValue()).toBe(strip);
      await field(page, 'Pixels').fill('12');
      await field(page, 'Pixels').press('Enter');
    }
    await drag(page, run(page, 'strip 4'), [0, 60]);
    await page.mouse.click(...(await middleOf(run(page, 'strip'))));
    await page.keyboard.down('Shift');
    for (const strip of strips.slice(1)) await page.mouse.click(...(await middleOf(run(page, strip))));
    await page.keyboard.up('Shift');
    await button(page, 'Zone of what is in hand').click();
    await field(page, 'Name').fill('tassels');
    await field(page, 'Name').press('Enter');

    await button(page, 'Compose').click();
    await layTwo(page, ['Sleeper', 'Wake']);
    await drag(page, clipInHand(page).locator('[data-grip="fade-in"]'), [0, 60]);
    await drag(page, clipInHand(page).locator('[data-grip="fade-out"]'), [0, -60]);
    await button(page, 'Tail: let it change over time').click();
    const course = page.locator('.course-field');
    await course.waitFor();
    await page.locator('.curve path').first().waitFor({ state: 'attached' });
    const box = (await course.boundingBox())!;
    await page.mouse.dblclick(box.x + box.width * 0.8, box.y + box.height * 0.6);
    await page.getByRole('slider', { name: 'Tail, key 2 of 2' }).waitFor();
    for (const [look, pair] of [
      [2, ['Ribbon', 'Dew']],
      [3, ['Millrace', 'Procession']],
    ] as const) {
      await button(page, 'New look').last().click();
      await page.locator(`.loom[aria-label="Loom: Look ${look}"]`).waitFor();
      await layTwo(page, pair);
    }

    await button(page, 'Change buttons').click();
    await page.getByLabel('Press twice').selectOption('pause');
    await button(page, 'Done').last().click();

    const piece = await provePiece(page);
    expect(piece.name).toBe('Ferry lamp');
    expect(piece.lines.flatMap(({ runs }) => runs.map(({ name, flat }) => [name, flat.kind]))).toEqual([
      ['ring', 'ring'],
      ...strips.map((name) => [name, 'straight']),
    ]);
    expect(piece.zones.map(({ name }) => name)).toEqual(['tassels']);
    expect(piece.looks.map((look) => look.tracks.length)).toEqual([2, 2, 2]);
    expect(
      piece.looks.map((_, look) => clipsOf(piece, look).map(({ pattern, zone }) => `${pattern} on ${zone}`)),
    ).toEqual([
      ['sleeper/1 on ring', 'wake/1 on tassels'],
      ['ribbon/1 on ring', 'dew/1 on tassels'],
      ['millrace/1 on ring', 'procession/1 on tassels'],
    ]);
    const wake = clipsOf(piece, 0)[1]!;
    expect(wake.fadeInMilliseconds).toBeGreaterThan(0);
    expect(wake.fadeOutMilliseconds).toBeGreaterThan(0);
    expect(wake.parameters.tail).toMatchObject({ keys: [{}, {}] });
    expect(piece.controls.buttons[0]!.double).toEqual({ do: 'pause' });
    expect(complaints).toEqual([]);
  }, 120_000);

  test('P2 by keys alone: first answers, a strip, a zone, two looks, fades and keys', async () => {
    const { page, complaints } = await visit(house());
    const { keyboard } = page;
    const press = async (thing: Locator, ...keys: string[]) => {
      await thing.focus();
      for (const key of keys) await keyboard.press(key);
    };
    const type = async (label: string, text: string) => {
      await press(field(page, label), 'Control+a');
      await keyboard.type(text);
      await keyboard.press('Enter');
    };
    await press(button(page, 'New piece'), 'Enter');
    await press(page.getByRole('radio', { name: 'A ring' }), 'Space');
    await press(button(page, 'There is more to lay out'), 'Enter');
    await press(
      page.getByRole('toolbar', { name: 'Lay down' }).getByRole('button', { name: 'Strip' }),
      'Enter',
    );
    await type('Pixels', '12');
    await press(button(page, 'Zone of what is in hand'), 'Enter');
    await type('Name', 'tassel');

    await press(button(page, 'Compose'), 'Enter');
    await press(swatch(page, 'Wake'), 'Enter');
    await page.getByRole('heading', { name: 'Wake', level: 2 }).waitFor();
    await press(field(page, 'Plays on'));
    await keyboard.type('tassel');
    await eventually(() => field(page, 'Plays on').locator('option:checked').innerText()).toMatch(/^tassel/);
    await press(clipInHand(page), 'i', 'i', 'i', 'o', 'o', 'Tab');
    await press(button(page, 'Tail: let it change over time'), 'Enter');
    await press(page.getByRole('slider', { name: 'Time in the clip' }), 'PageDown', 'PageDown');
    await press(button(page, 'Add a key here'), 'Enter');
    await page.getByRole('slider', { name: 'Tail, key 2 of 2' }).waitFor();
    await press(button(page, 'New look').last(), 'Enter');
    await page.locator('.loom[aria-label="Loom: Look 2"]').waitFor();
    await press(swatch(page, 'Dew'), 'Enter');
    await page.getByRole('heading', { name: 'Dew', level: 2 }).waitFor();

    const { piece } = await save(page, () => keyboard.press('Control+s'));
    expect(piece.zones.map(({ name }) => name)).toEqual(['tassel']);
    expect(piece.looks).toHaveLength(2);
    const [wake] = clipsOf(piece, 0);
    expect(wake).toMatchObject({
      pattern: 'wake/1',
      zone: 'tassel',
      fadeInMilliseconds: 300,
      fadeOutMilliseconds: 200,
    });
    expect(wake!.parameters.tail).toMatchObject({ keys: [{}, {}] });
    expect(clipsOf(piece, 1).map(({ pattern }) => pattern)).toEqual(['dew/1']);
    expect(complaints).toEqual([]);
  }, 60_000);
}

/** Each on a track of its own: the first on the ring, the second on the tassels. */
async function layTwo(page: Page, [below, above]: readonly [string, string]): Promise<void> {
  for (const [pattern, zone] of [
    [below, 'ring'],
    [above, 'tassels'],
  ] as const) {
    await swatch(page, pattern).click();
    await page.getByRole('heading', { name: pattern, level: 2 }).waitFor();
    const choice = field(page, 'Plays on');
    const option = choice.locator('option', { hasText: new RegExp(`^${zone}\\b`) });
    await choice.selectOption((await option.getAttribute('value')) ?? zone);
    await eventually(() => choice.locator('option:checked').innerText()).toMatch(new RegExp(`^${zone}\\b`));
  }
}
