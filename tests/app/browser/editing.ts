/** Dials, undo, files, patterns, the sketch. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { generateSketch } from '../../../codegen/sketch.ts';
import { borrowFrame, stillMoment } from '../../../engine/look/frame.ts';
import { findLibraryPattern } from '../../../engine/pattern/library.ts';
import { loadPiece } from '../../../engine/piece/load.ts';
import type { Piece } from '../../../engine/piece/schema.ts';
import { samplePiece, sampleText, scoreOf } from './samples.ts';
import { eventually, type House, lastHeard, moving, visit } from './visit.ts';

const parasol = samplePiece('jellyfish-parasol');
const [firstClip] = parasol.looks[0]!.tracks[0]!.clips;

/** A text area of the code editor takes no plain typing; its model is reached by the keyboard. */
async function retype(page: Page, text: string): Promise<void> {
  await page.locator('.pattern-pane .monaco-editor').click();
  await page.keyboard.press('ControlOrMeta+a');
  await page.keyboard.insertText(text);
}

async function pauseAtStart(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Play' }).waitFor();
  await page.getByRole('slider', { name: 'Time in the look' }).press('Home');
  await eventually(async () => (await lastHeard(page)).moment.ms).toBe(0);
}

/** The drive of a piece's first look at its start, as the engine gives it. */
function driveAtStart(piece: Piece): number[] {
  return [...borrowFrame(scoreOf(piece), stillMoment(0, 0, piece.output.startBrightness)).drive];
}

function withFirstClip(change: Partial<Piece['looks'][number]['tracks'][number]['clips'][number]>): Piece {
  const piece = structuredClone(parasol);
  Object.assign(piece.looks[0]!.tracks[0]!.clips[0]!, change);
  return piece;
}

export function testEditing(house: () => House): void {
  test('W6 a dial changes the drive at once, and undo takes it back', async () => {
    const { page } = await visit(house());
    await pauseAtStart(page);
    const before = driveAtStart(parasol);
    await eventually(async () => (await lastHeard(page)).drive).toEqual(before);

    expect(firstClip!.pattern).toBe('sleeper/1');
    await page.getByLabel('Opacity', { exact: true }).fill('40');
    const after = driveAtStart(withFirstClip({ opacity: 40 }));
    expect(after).not.toEqual(before);
    await eventually(async () => (await lastHeard(page)).drive).toEqual(after);

    await page.getByRole('button', { name: 'Undo' }).click();
    await eventually(async () => (await lastHeard(page)).drive).toEqual(before);
    await page.getByRole('button', { name: 'Redo' }).click();
    await eventually(async () => (await lastHeard(page)).drive).toEqual(after);
  });

  test('W6 number, colour and gradient of a clip are turned live', async () => {
    const { page } = await visit(house());
    await pauseAtStart(page);
    const parameters = { ...firstClip!.parameters, tint: '#20c040', lowest: 0.75 };
    await page.getByLabel('Lowest', { exact: true }).fill('0.75');
    await page.getByLabel('Tint', { exact: true }).fill('#20c040');
    await eventually(async () => (await lastHeard(page)).drive).toEqual(
      driveAtStart(withFirstClip({ parameters })),
    );

    await page.getByRole('button', { name: /^Millrace/ }).click();
    const stop = page.getByRole('slider', { name: 'Water, stop 2' });
    const before = Number(await stop.getAttribute('aria-valuenow'));
    const drive = (await lastHeard(page)).drive;
    for (let i = 0; i < 5; i++) await stop.press('ArrowLeft');
    await eventually(async () => Number(await stop.getAttribute('aria-valuenow'))).toBe(before - 5);
    await eventually(async () => (await lastHeard(page)).drive).not.toEqual(drive);
  });

  test('W6 a drag is one step of the pointer and of the keyboard, and undo says what it takes back', async () => {
    const { page } = await visit(house());
    const nextUndo = page.getByRole('button', { name: /^Undo/ });
    const dial = page.getByLabel('Opacity', { exact: true });
    const start = await dial.inputValue();
    expect(await nextUndo.getAttribute('aria-label')).toBe('Undo');
    expect(await nextUndo.isDisabled()).toBe(true);

    const box = (await dial.boundingBox())!;
    const y = box.y + box.height / 2;
    await page.mouse.move(box.x + box.width * 0.9, y);
    await page.mouse.down();
    for (const share of [0.8, 0.6, 0.4, 0.3]) await page.mouse.move(box.x + box.width * share, y);
    await page.mouse.up();
    const dragged = await dial.inputValue();
    expect(Number(dragged)).toBeLessThan(Number(start));
    for (let i = 0; i < 4; i++) await dial.press('ArrowLeft');
    await dial.blur();
    expect(await dial.inputValue()).toBe(String(Number(dragged) - 4));

    await page.getByRole('button', { name: /^Millrace/ }).click();
    await page.getByLabel('Once round', { exact: true }).press('ArrowRight');
    expect(await nextUndo.getAttribute('aria-label')).toBe('Undo: Set period of Millrace');
    expect(await nextUndo.getAttribute('title')).toBe('Undo: Set period of Millrace');
    await nextUndo.click();
    expect(await page.getByRole('button', { name: /^Redo/ }).getAttribute('aria-label')).toBe(
      'Redo: Set period of Millrace',
    );

    await page.getByRole('button', { name: /^Sleeper/ }).click();
    expect(await nextUndo.getAttribute('aria-label')).toBe('Undo: Set opacity of Sleeper');
    await nextUndo.click();
    expect(await dial.inputValue()).toBe(dragged);
    await nextUndo.click();
    expect(await dial.inputValue()).toBe(start);
    expect(await nextUndo.isDisabled()).toBe(true);
  });

  test('W7 a bad file lists what is wrong and where, and the open piece plays on', async () => {
    const { page } = await visit(house(), moving);
    const bad = JSON.parse(sampleText('ferrymans-hat'));
    bad.looks[0].tracks[0].clips[0].zone = 'the moon';
    bad.looks[1].lengthMilliseconds = -4;
    bad.surprise = true;
    const text = JSON.stringify(bad, null, 2);
    const { value, diagnostics } = loadPiece(text);
    expect(value).toBeUndefined();

    await page.setInputFiles('input[type="file"]', {
      name: 'broken.piece.json',
      mimeType: 'application/json',
      buffer: Buffer.from(text),
    });
    const dialog = page.getByRole('dialog');
    await dialog.waitFor();
    const listed = await dialog.locator('.findings li').allInnerTexts();
    expect(listed).toHaveLength(diagnostics.length);
    for (const [i, { message, advice, path, inFile }] of diagnostics.entries()) {
      expect(listed[i]).toContain(message);
      expect(listed[i]).toContain(advice);
      expect(listed[i]).toContain(path);
      expect(listed[i]).toContain(`line ${inFile!.line}, column ${inFile!.column}`);
    }
    const { ms } = (await lastHeard(page)).moment;
    await eventually(async () => (await lastHeard(page)).moment.ms).toBeGreaterThan(ms);
    await page.getByRole('button', { name: 'Back to the bench' }).click();
    await dialog.waitFor({ state: 'hidden' });
    expect(await page.locator('.piece-name b').innerText()).toBe(parasol.name);
    expect(await page.locator('.swatch').count()).toBe(parasol.looks.length);
  });

  test('W7 what is no piece at all is refused in words, also when it is dropped on the page', async () => {
    const { page } = await visit(house());
    await page.evaluate(() => {
      const carried = new DataTransfer();
      carried.items.add(new File(['<svg xmlns="http://www.w3.org/2000/svg"/>'], 'moon.svg'));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, cancelable: true }));
    });
    const dialog = page.getByRole('dialog', { name: 'moon.svg cannot be opened yet' });
    await dialog.waitFor();
    expect(await dialog.locator('.findings li').count()).toBeGreaterThan(0);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
  });

  test('W8 an own pattern is proofread while it is written, and plays the last good text', async () => {
    const { page } = await visit(house());
    await pauseAtStart(page);
    const before = driveAtStart(parasol);
    await page.getByRole('button', { name: 'Show the source' }).click();
    await page.getByRole('button', { name: 'Make it my own' }).click();
    await page.getByText('your own pattern').waitFor();
    await page.locator('.pattern-pane .code-pane[data-ready="true"]').waitFor();
    await eventually(async () => (await lastHeard(page)).drive).toEqual(before);

    const { source, parameters } = findLibraryPattern('sleeper/1')!;
    await retype(page, source.replace('return', 'retrun'));
    const findings = page.locator('.proof .findings li');
    await findings.first().waitFor();
    expect(await findings.first().innerText()).toMatch(/line \d+, column \d+/);
    await page.locator('.squiggly-error').first().waitFor();
    expect((await lastHeard(page)).drive).toEqual(before);

    const steady = source.replace(/return [^;]+;/, 'return tint;');
    expect(steady).not.toBe(source);
    await retype(page, steady);
    const own = withFirstClip({ pattern: 'my sleeper' });
    own.patterns.push({ name: 'my sleeper', source: steady, parameters: [...parameters] });
    await eventually(async () => (await lastHeard(page)).drive).toEqual(driveAtStart(own));

    // A parameter that is new gets a dial, which plays.
    await retype(
      page,
      steady
        .replace('return tint;', 'return tint * glow;')
        .replace('lowp vec3 light', 'uniform lowp float glow;\n$&'),
    );
    await page.getByRole('button', { name: 'Give glow a dial' }).click();
    await page.getByLabel('Glow', { exact: true }).fill('1');
    await eventually(async () => (await lastHeard(page)).drive).toEqual(driveAtStart(own));
    await page.getByLabel('Glow', { exact: true }).fill('0');
    await eventually(async () => (await lastHeard(page)).drive).not.toEqual(driveAtStart(own));
  });

  test('W9 the copied sketch is what the generator writes', async () => {
    const { page } = await visit(house(), { permissions: ['clipboard-read', 'clipboard-write'] });
    await page.getByRole('button', { name: 'Firmware' }).click();
    await page.getByRole('button', { name: 'Copy', exact: true }).click();
    await page.getByRole('button', { name: 'Copied' }).waitFor();
    const copied = await page.evaluate(() => navigator.clipboard.readText());
    const { value } = generateSketch(scoreOf(parasol), parasol.board);
    expect(copied).toBe(value!.text);

    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Download' }).click();
    const file = await download;
    expect(file.suggestedFilename()).toBe(value!.fileName);
    expect(readFileSync(await file.path(), 'utf8')).toBe(value!.text);
    await page.locator('.code-pane[data-ready="true"]').waitFor();
    await eventually(() => page.locator('.view-lines').innerText()).toContain('Before');
  });

  test('W13 a saved file opens as the same piece', async () => {
    const { page } = await visit(house());
    await page.getByLabel('Opacity', { exact: true }).fill('40');
    await eventually(() => page.locator('.piece-name').innerText()).toContain('not saved');
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save' }).click();
    const file = await download;
    expect(file.suggestedFilename()).toBe('jellyfish-parasol.piece.json');
    const { value, diagnostics } = loadPiece(readFileSync(await file.path(), 'utf8'));
    expect(diagnostics).toEqual([]);
    expect(value).toEqual(withFirstClip({ opacity: 40 }));
    expect(await page.locator('.piece-name').innerText()).not.toContain('not saved');
  });

  test('W16 the figures of the open look are those of the power report', async () => {
    const { page } = await visit(house());
    const { reportPower } = await import('../../../engine/power/report.ts');
    const [drift] = reportPower(scoreOf(parasol)).looks;
    const figure = (name: string) =>
      page
        .locator('.figures dl > div', { has: page.locator('dt', { hasText: name }) })
        .locator('dd')
        .innerText();
    await eventually(() => figure('average')).toBe(`${drift!.averageMilliamps.toFixed(0)} mA`);
    expect(await figure('peak')).toBe(`${drift!.peakMilliamps.toFixed(0)} mA`);
    await eventually(() => figure('program memory')).toMatch(/^[\d.]+ KB of 32 KB$/);
  });
}
