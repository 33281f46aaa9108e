/** Opening, playing, pressing, scrubbing. */
import { expect, test } from 'vitest';
import { fitPlaces } from '../../../app/web/picture/fit.ts';
import { borrowFrame, stillMoment } from '../../../engine/look/frame.ts';
import { decodePng, glowAt } from './pixels.ts';
import { samplePiece, scoreOf } from './samples.ts';
import {
  eventually,
  type House,
  lastHeard,
  moving,
  openSample,
  sizes,
  told,
  untilTold,
  visit,
} from './visit.ts';

const parasol = samplePiece('jellyfish-parasol');
const hat = samplePiece('ferrymans-hat');

/** Longer than the debounce time, shorter than a hold. */
const pressMs = 120;

export function testPlaying(house: () => House): void {
  test('W1 the page opens with a sample that plays, and its lit pixels glow', async () => {
    const { page, complaints } = await visit(house(), moving);
    expect(await page.locator('.piece-name b').innerText()).toBe(parasol.name);
    const before = (await lastHeard(page)).moment.ms;
    await page.waitForFunction((ms) => {
      const { heard } = window as unknown as { heard: { moment: { ms: number } }[] };
      return heard.at(-1)!.moment.ms > ms + 300;
    }, before);

    await page.getByRole('button', { name: 'Pause' }).click();
    await page.getByRole('button', { name: 'Play' }).waitFor();
    await page.waitForTimeout(300);
    const { drive } = await lastHeard(page);
    const box = page.locator('.picture-canvas');
    const png = await box.screenshot();
    const picture = await decodePng(house().browser, png);
    const score = scoreOf(parasol);
    const places = Float32Array.from(score.pixels.flatMap(({ worn }) => [worn.x, worn.y]));
    const { spots } = fitPlaces(places, picture.width, picture.height);
    const lit = score.pixels
      .map((_, pixel) => ({ pixel, drive: Math.max(...drive.slice(pixel * 3, pixel * 3 + 3)) }))
      .sort((a, b) => b.drive - a.drive)
      .slice(0, 20);
    expect(lit[19]!.drive).toBeGreaterThan(10);
    for (const { pixel } of lit) {
      expect(glowAt(picture, spots[2 * pixel]!, spots[2 * pixel + 1]!), `pixel ${pixel}`).toBeGreaterThan(
        120,
      );
    }
    // The corner of the bench, where no pixel is, stays dark.
    expect(glowAt(picture, 4, picture.height - 6)).toBeLessThan(50);
    expect(complaints).toEqual([]);
  });

  test('W1 who asks for less motion gets the piece paused', async () => {
    const { page } = await visit(house());
    await page.getByRole('button', { name: 'Play' }).waitFor();
    const { ms } = (await lastHeard(page)).moment;
    await page.waitForTimeout(400);
    expect((await lastHeard(page)).moment.ms).toBe(ms);
  });

  test('W2 a press by mouse, by key, by touch and by assistive technology changes the look', async () => {
    const { page } = await visit(house(), { ...moving, hasTouch: true });
    await openSample(page, 'ferrymans-hat', hat.name);
    const button = page.getByRole('button', { name: hat.controls.buttons[0]!.name });
    const names = hat.looks.map((look) => look.name);

    await button.hover();
    await page.mouse.down();
    await page.waitForTimeout(pressMs);
    await page.mouse.up();
    await untilTold(page, `Look: ${names[1]}.`);

    await button.focus();
    await page.keyboard.down(' ');
    await page.waitForTimeout(pressMs);
    await page.keyboard.up(' ');
    await untilTold(page, `Look: ${names[2]}.`);

    await button.tap();
    await untilTold(page, `Look: ${names[3]}.`);

    // Well apart from the tap, whose own click a busy browser may deliver late.
    await page.waitForTimeout(1000);
    await button.evaluate((element: HTMLElement) => element.click());
    await untilTold(page, `Look: ${names[4]}.`);
    await eventually(() => page.locator('.swatch[aria-current="true"]').innerText()).toBe(names[4]);
  });

  test('W2 a hold and a double press give their own actions', async () => {
    const { page } = await visit(house(), moving);
    await openSample(page, 'ferrymans-hat', hat.name);
    const button = page.getByRole('button', { name: hat.controls.buttons[0]!.name });
    expect(hat.controls.buttons[0]).toMatchObject({
      hold: { do: 'blackout' },
      double: { do: 'brightness-step' },
    });

    await button.focus();
    await page.keyboard.down('Enter');
    await untilTold(page, 'Blackout.');
    await page.keyboard.up('Enter');
    expect((await lastHeard(page)).drive.every((byte) => byte === 0)).toBe(true);

    // In blackout any action only ends it.
    await page.keyboard.press('Enter', { delay: pressMs });
    await untilTold(page, 'Blackout ends.');

    // Two clicks at once are drawn out to two presses; fingers driven from here could come too late for a double.
    await button.evaluate((element: HTMLElement) => {
      element.click();
      element.click();
    });
    await untilTold(page, 'Brightness');
    expect((await lastHeard(page)).moment.brightness).toBe(128);
  });

  test('W4 scrubbing by key shows the very frame that the engine gives', async () => {
    const { page } = await visit(house(), moving);
    await page.getByRole('button', { name: 'Pause' }).click();
    await page.getByRole('button', { name: 'Play' }).waitFor();
    const shuttle = page.getByRole('slider', { name: 'Time in the look' });
    await shuttle.focus();
    const keys = [
      'Home',
      'PageDown',
      'PageDown',
      'PageDown',
      'ArrowDown',
      'ArrowDown',
      'ArrowUp',
      'ArrowDown',
    ];
    let ms = 0;
    const steps: Record<string, number> = { Home: 0, PageDown: 1000, ArrowDown: 20, ArrowUp: -20 };
    for (const key of keys) {
      ms = key === 'Home' ? 0 : ms + steps[key]!;
      await page.keyboard.press(key);
      await eventually(async () => (await lastHeard(page)).moment.ms).toBe(ms);
    }
    const { moment, drive, levels } = await lastHeard(page);
    const expected = borrowFrame(scoreOf(parasol), stillMoment(0, ms, moment.brightness));
    expect(drive).toEqual([...expected.drive]);
    expect(levels).toEqual([...expected.levels]);
    expect(await shuttle.getAttribute('aria-valuetext')).toBe('3.04 s of 24 s');

    // What hangs above the cloth is that frame too: each dot is its pixel's level on unlit thread.
    const row = await page.locator('.live-weft').evaluate((canvas: HTMLCanvasElement) => {
      const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, 1);
      return [...data];
    });
    expect(row.length).toBe(parasol.lines[0] === undefined ? 0 : (levels.length / 3) * 4);
    const brightest = levels.indexOf(Math.max(...levels));
    const darkest = levels.indexOf(Math.min(...levels));
    const dot = (level: number) => row[Math.floor(level / 3) * 4 + (level % 3)]!;
    expect(dot(brightest)).toBeGreaterThan(dot(darkest) + 60);
  });

  test('W4 dragging over the cloth seeks the time under the pointer', async () => {
    const { page } = await visit(house(), moving);
    await page.getByRole('button', { name: 'Pause' }).click();
    const bed = await page.locator('.warp.whole').boundingBox();
    const { x, y, width, height } = bed!;
    await page.mouse.move(x + width / 2, y + height * 0.1);
    await page.mouse.down();
    await page.mouse.move(x + width / 2, y + height * 0.5, { steps: 4 });
    await page.mouse.up();
    await eventually(async () =>
      Math.abs((await lastHeard(page)).moment.ms - parasol.looks[0]!.lengthMilliseconds / 2),
    ).toBeLessThan(100);
  });

  test('W4 a finger taps the cloth to seek, and may scroll past it', async () => {
    const { page } = await visit(house(), { ...moving, viewport: sizes.phone, hasTouch: true });
    await page.getByRole('button', { name: 'Pause' }).click();
    const cloth = page.locator('.warp.whole');
    await cloth.scrollIntoViewIfNeeded();
    const { x, y, height } = (await cloth.boundingBox())!;
    await page.touchscreen.tap(x + 20, y + height * 0.25);
    const quarter = parasol.looks[0]!.lengthMilliseconds / 4;
    await eventually(async () => Math.abs((await lastHeard(page)).moment.ms - quarter)).toBeLessThan(150);
    expect(await cloth.evaluate((element) => getComputedStyle(element).touchAction)).toContain('pan-y');
  });

  test('W2 looks are reached from the thread as well, and the brightness from its slider', async () => {
    const { page } = await visit(house(), { ...moving, viewport: sizes.phone });
    await page.locator('.swatch', { hasText: parasol.looks[2]!.name }).click();
    await eventually(async () => (await lastHeard(page)).moment.look).toBe(2);
    await page.getByLabel('Brightness').fill('128');
    await eventually(async () => (await lastHeard(page)).moment.brightness).toBe(128);
    await page.getByRole('button', { name: 'start here' }).click();
    await eventually(() => page.locator('.piece-name').innerText()).toContain('not saved');
    expect(await told(page)).toBe(`${parasol.name} is on the bench.`);
  });
}
