import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { courseOf } from '../../../engine/edit/courses/course.ts';
import type { Edit } from '../../../engine/edit/edit.ts';
import { choosePattern } from '../../../engine/edit/offers/pattern.ts';
import { borrowFrame, stillMoment } from '../../../engine/look/frame.ts';
import { axeFindings } from './axe.ts';
import { afterEdits, pieceOn } from './piece.ts';
import { samplePiece, scoreOf } from './samples.ts';
import { eventually, type House, lastHeard, sizes, stillVisit } from './visit.ts';

const parasol = samplePiece('jellyfish-parasol');
const [look] = parasol.looks;
/** Sleeper on the rim: as long as its look, 24 seconds. */
const at = { look: look!.name, track: 0, clip: 0 };
const course = { at, parameter: 'period' };
/** One breath, in seconds, and how long the clip lasts. */
const range = { min: 1, max: 20, spanMs: 24_000 };

const nextUndo = (page: Page) => page.getByRole('button', { name: /^Undo/ }).getAttribute('aria-label');

export function testTagging(house: () => House): void {
  test('N1 N2 N3 a figure is typed exactly, told where it cannot be, and finds the way back', async () => {
    const { page } = await stillVisit(house());
    const breath = page.getByLabel('One breath, exactly');
    await breath.fill('7,125 s');
    await breath.press('Enter');
    expect(await breath.inputValue()).toBe('7.125 s');
    await breath.press('Shift+ArrowUp');
    expect(await breath.inputValue()).toBe('7.625 s');

    await breath.fill('99');
    await breath.press('Enter');
    expect(await page.locator('.told').innerText()).toContain('1 s to 20 s');
    expect(await breath.inputValue()).toBe('99');
    expect(await page.getByLabel('One breath', { exact: true }).getAttribute('aria-valuetext')).toBe(
      '7.625 s',
    );
    await breath.press('Escape');
    expect(await breath.inputValue()).toBe('7.625 s');

    await page.getByRole('button', { name: 'One breath: back to 5 s' }).click();
    expect(await breath.inputValue()).toBe('5 s');
    expect(await page.getByRole('button', { name: /^One breath: back/ }).count()).toBe(0);

    // Its track is full, so it can go nowhere; shorter, it can begin later.
    await page.getByText('More about this clip').click();
    const start = page.getByLabel('Starts at');
    await start.fill('2');
    await start.press('Enter');
    expect(await page.locator('.told').innerText()).toContain('0 s here');
    await start.press('Escape');
    await page.getByLabel('Lasts').fill('20 s');
    await page.getByLabel('Lasts').press('Enter');
    await start.fill('2');
    await start.press('Enter');
    await page.getByLabel('Plays on').selectOption('all');
    await page.getByLabel('Pattern', { exact: true }).selectOption('dew/1');

    const set = { kind: 'set-parameter', at, parameter: 'period' } as const;
    const laid = afterEdits(
      parasol,
      { ...set, value: null },
      { kind: 'trim-clip', at, startMilliseconds: 0, lengthMilliseconds: 20_000 },
      { kind: 'move-clip', at, to: at, startMilliseconds: 2000 },
      { kind: 'set-clip', at, set: { zone: 'all' } },
    );
    const expected = afterEdits(laid, choosePattern(laid, at, 'dew/1').value!);
    expect(await pieceOn(page)).toEqual(expected);
  });

  test('N4 a row that is turned draws no other row anew', async () => {
    const { page } = await stillVisit(house());
    await page.getByText('More about this clip').click();
    await page.getByRole('button', { name: 'Lowest: let it change over time' }).click();
    await page.getByRole('slider', { name: 'Time in the clip' }).waitFor();
    // React hands each element the props it was drawn with last: another object, if it was drawn again.
    const drawnAnew = await page.evaluate(async () => {
      const propsOf = (element: Element) => {
        const key = Object.keys(element).find((name) => name.startsWith('__reactProps$'))!;
        return (element as unknown as Record<string, unknown>)[key];
      };
      const before = new Map([...document.querySelectorAll('.tag *')].map((one) => [one, propsOf(one)]));
      const dial = document.querySelectorAll<HTMLInputElement>('.parameter input[type="range"]')[0]!;
      const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')!.set!;
      for (const value of ['9', '10', '11']) {
        set.call(dial, value);
        dial.dispatchEvent(new Event('input', { bubbles: true }));
        await new Promise((resolve) => setTimeout(resolve, 60));
      }
      const changed = [...before].filter(([one, props]) => one.isConnected && propsOf(one) !== props);
      const own = dial.closest('.parameter');
      return {
        own: changed.filter(([one]) => one.closest('.parameter') === own).length,
        others: changed.filter(([one]) => one.closest('.parameter') !== own).map(([one]) => one.outerHTML),
        value: dial.value,
      };
    });
    expect(drawnAnew.value).toBe('11');
    expect(drawnAnew.own).toBeGreaterThan(3);
    // What the clip draws is a figure, not a row: it follows once the loft has weighed it.
    expect(drawnAnew.others.filter((html) => !html.includes('mA'))).toEqual([]);
  });

  test('N7 N8 N9 keys by pointer are the edits they stand for, and play as they are drawn', async () => {
    const { page } = await stillVisit(house());
    await page.getByRole('button', { name: 'One breath: let it change over time' }).click();
    const field = page.locator('.course-field');
    await field.waitFor();
    await page.locator('.curve path').first().waitFor({ state: 'attached' });
    const box = await field.evaluate((element) => {
      const { left, top } = element.getBoundingClientRect();
      return { x: left, y: top, width: element.clientWidth, height: element.clientHeight };
    });
    const width = range.max - range.min;
    const near = (value: number, step: number) => Number((Math.round(value / step) * step).toFixed(6));

    // Added where the pointer is, to a tenth of a second and a twentieth of one as values go.
    const pointed = { x: Math.round(box.x + box.width * 0.75), y: Math.round(box.y + box.height * 0.5) };
    await page.mouse.dblclick(pointed.x, pointed.y);
    const added = {
      atMilliseconds: near(((pointed.y - box.y) / box.height) * range.spanMs, 100),
      value: near(range.min + ((pointed.x - box.x) / box.width) * width, 0.05),
    };
    const second = page.getByRole('slider', { name: 'One breath, key 2 of 2' });
    await second.waitFor();

    const pin = (await second.boundingBox())!;
    // Whole pixels, as a mouse has them.
    const middle = { x: Math.round(pin.x + pin.width / 2), y: Math.round(pin.y + pin.height / 2) };
    await page.mouse.move(middle.x, middle.y);
    await page.mouse.down();
    for (const share of [0.3, 0.7, 1]) await page.mouse.move(middle.x - 40 * share, middle.y + 60 * share);
    await page.mouse.up();
    expect(await nextUndo(page)).toBe('Undo: Move key of period of Sleeper');
    const moved = {
      atMilliseconds: near(added.atMilliseconds + (60 / box.height) * range.spanMs, 100),
      value: near(added.value - (40 / box.width) * width, 0.05),
    };

    // The way between the two is bent by a handle of the first.
    await page.getByRole('slider', { name: 'One breath, key 1 of 2' }).press('PageUp');
    const handle = page.getByRole('slider', { name: 'One breath: how it sets off' });
    await handle.waitFor();
    await handle.focus();
    for (let i = 0; i < 2; i++) await page.keyboard.press('Shift+ArrowDown');
    await page.keyboard.press('Shift+ArrowLeft');

    const expected = afterEdits(
      parasol,
      { kind: 'add-key', ...course, key: { atMilliseconds: 0, value: 8, easing: 'linear' } },
      { kind: 'add-key', ...course, key: { ...added, easing: 'linear' } },
      { kind: 'move-key', ...course, key: 1, toMilliseconds: moved.atMilliseconds },
      { kind: 'set-key', ...course, key: 1, set: { value: moved.value } },
      { kind: 'set-key', ...course, key: 0, set: { easing: [0.45, 0.15, 0.75, 0.75] } },
    );
    const piece = await pieceOn(page);
    expect(piece).toEqual(expected);

    // The frames of three moments, sought on the course itself.
    const needle = page.getByRole('slider', { name: 'Time in the clip' });
    await needle.focus();
    await page.keyboard.press('Home');
    for (const ms of [1000, 2000, 3000]) {
      await page.keyboard.press('PageDown');
      const { drive } = borrowFrame(scoreOf(piece), stillMoment(0, ms, piece.output.startBrightness));
      await eventually(async () => (await lastHeard(page)).drive).toEqual([...drive]);
    }

    // The drawn line against the curve of CSS as the browser itself computes it.
    const keys = courseOf(piece.looks[0]!.tracks[0]!.clips[0]!.parameters.period)!;
    const [from, to] = keys.map((key) => ({ ms: key.atMilliseconds, value: Number(key.value) }));
    const drawn = await page.evaluate(
      ({ easing, length }) => {
        const path = document.querySelector('.curve path')!.getAttribute('d')!;
        const points = path
          .slice(1)
          .split('L')
          .map((point) => point.split(' ').map(Number));
        const effect = new KeyframeEffect(document.body, null, { duration: length, easing, fill: 'both' });
        const animation = new Animation(effect);
        animation.pause();
        const progress = Array.from({ length: 41 }, (_, i) => {
          animation.currentTime = (i / 40) * length;
          return effect.getComputedTiming().progress!;
        });
        animation.cancel();
        return { points, progress };
      },
      { easing: 'cubic-bezier(0.45, 0.15, 0.75, 0.75)', length: to!.ms - from!.ms },
    );
    for (const [i, progress] of drawn.progress.entries()) {
      const value = from!.value + progress * (to!.value - from!.value);
      const wantedX = ((value - range.min) / width) * box.width;
      const wantedY = ((from!.ms + (i / 40) * (to!.ms - from!.ms)) / range.spanMs) * box.height;
      const distances = drawn.points.map(([px, py]) => Math.hypot(px! - wantedX, py! - wantedY));
      expect(Math.min(...distances), `at ${i} of 40`).toBeLessThan(1);
    }
  });

  test('N7 N8 keys by keyboard alone come to the same, step by step, and untied it stands still', async () => {
    const { page } = await stillVisit(house());
    await page.getByRole('button', { name: 'One breath: let it change over time' }).press('Enter');
    const needle = page.getByRole('slider', { name: 'Time in the clip' });
    await needle.waitFor();
    for (let i = 0; i < 4; i++) await needle.press('PageDown');
    await eventually(async () => (await lastHeard(page)).moment.ms).toBe(4000);
    await page.getByRole('button', { name: 'Add a key here' }).press('Enter');
    const pin = page.getByRole('slider', { name: 'One breath, key 2 of 2' });
    await pin.press('Shift+ArrowRight');
    await pin.press('Shift+ArrowRight');
    await pin.press('ArrowLeft');
    await pin.press('Shift+ArrowDown');
    await pin.press('ArrowUp');
    await page.getByRole('slider', { name: 'One breath, key 2 of 2' }).press('PageUp');
    await page.getByLabel('Easing as CSS writes it').fill('ease-out');
    await page.getByLabel('Easing as CSS writes it').press('Enter');

    const twoKeys: Edit[] = [
      { kind: 'add-key', ...course, key: { atMilliseconds: 0, value: 8, easing: 'linear' } },
      { kind: 'add-key', ...course, key: { atMilliseconds: 4000, value: 8, easing: 'linear' } },
      { kind: 'set-key', ...course, key: 1, set: { value: 8.95 } },
      { kind: 'move-key', ...course, key: 1, toMilliseconds: 4900 },
    ];
    const eased: Edit = { kind: 'set-key', ...course, key: 0, set: { easing: 'ease-out' } };
    expect(await pieceOn(page)).toEqual(afterEdits(parasol, ...twoKeys, eased));

    const undo = page.getByRole('button', { name: /^Undo/ });
    await undo.click();
    await undo.click();
    expect(await pieceOn(page)).toEqual(afterEdits(parasol, ...twoKeys.slice(0, 2)));

    const still = page.getByRole('button', { name: 'One breath: changes over time; let it stand still' });
    await still.press('Enter');
    expect(await pieceOn(page)).toEqual(parasol);
  });

  test('N5 a colour is turned by lightness, chroma and hue, as the browser’s own oklch() has it', async () => {
    const { page } = await stillVisit(house());
    await page.getByRole('button', { name: 'Tint: lightness, chroma, hue' }).click();
    const type = async (name: string, text: string) => {
      const entry = page.getByLabel(`${name}, exactly`);
      await entry.fill(text);
      await entry.press('Enter');
    };
    const tint = page.getByLabel('Tint', { exact: true });
    for (const [lightness, chroma, hue] of [
      [80, 0.15, 160],
      [50, 0.2, 270],
    ] as const) {
      await type('Chroma', '0');
      await type('Lightness', `${lightness} %`);
      await type('Hue', `${hue}`);
      await type('Chroma', `${chroma}`);
      const painted = await page.evaluate((colour) => {
        const context = document.createElement('canvas').getContext('2d')!;
        context.fillStyle = colour;
        context.fillRect(0, 0, 1, 1);
        return [...context.getImageData(0, 0, 1, 1).data.slice(0, 3)];
      }, `oklch(${lightness}% ${chroma} ${hue})`);
      const hex = await tint.inputValue();
      const levels = [1, 3, 5].map((digit) => Number.parseInt(hex.slice(digit, digit + 2), 16));
      for (const [channel, level] of levels.entries())
        expect(Math.abs(level - painted[channel]!), `${hex} at ${hue}`).toBeLessThanOrEqual(1);
    }
    expect(await page.getByText('cannot be more vivid').count()).toBe(0);
    await type('Chroma', '0.3');
    await page.getByText('cannot be more vivid').waitFor();
    await type('Chroma', '0');
    expect(await tint.inputValue()).toMatch(/^#(..)\1\1$/);
    expect(await page.getByLabel('Hue', { exact: true }).getAttribute('aria-valuetext')).toBe('270°');
  });

  test('N10 the clip says what it draws, N12 and nothing that the tag opens offends axe', async () => {
    const { page, complaints } = await stillVisit(house());
    await eventually(() => page.locator('.draws').innerText()).toMatch(/Draws \d+ mA .* takes [\d.]+ ms/);
    const drawn = Number(/Draws (\d+) mA/.exec(await page.locator('.draws').innerText())![1]);
    const alone = structuredClone(parasol);
    alone.looks[0]!.tracks = [alone.looks[0]!.tracks[0]!];
    const score = scoreOf(alone);
    const currents = Array.from({ length: 200 }, (_, i) => {
      const moment = stillMoment(0, Math.floor((i * range.spanMs) / 200), parasol.output.startBrightness);
      return borrowFrame(score, moment).milliamps;
    });
    const dark = borrowFrame(score, { ...stillMoment(0, 0, 64), blackout: true }).milliamps;
    const mean = currents.reduce((sum, current) => sum + current) / currents.length - dark;
    expect(drawn).toBe(Math.round(mean));

    await page.getByText('More about this clip').click();
    await page.getByRole('button', { name: 'Tint: lightness, chroma, hue' }).click();
    await page.getByLabel('Hue', { exact: true }).waitFor();
    await page.getByRole('button', { name: 'One breath: let it change over time' }).click();
    await page.getByRole('button', { name: 'Add a key here' }).waitFor();
    await page.getByRole('slider', { name: 'Time in the clip' }).press('End');
    await page.getByRole('button', { name: 'Add a key here' }).click();
    for (const size of [sizes.desk, sizes.phone]) {
      await page.setViewportSize(size);
      expect(await axeFindings(page)).toEqual([]);
    }
    expect(complaints).toEqual([]);
  });

  test('N11 a range of an own pattern is changed beside its source, and a refused edit says why by its row', async () => {
    const { page } = await stillVisit(house());
    await page.getByRole('button', { name: 'Show the source' }).click();
    await page.getByRole('button', { name: 'Make it my own' }).click();
    await page.getByText('What can be turned on it').click();
    const breath = page.getByRole('group', { name: 'period' });
    const most = breath.getByLabel('to', { exact: true });
    await most.fill('6 s');
    await most.press('Enter');
    // The clip had 8 seconds, and is made to fit.
    expect(await page.getByLabel('One breath, exactly').inputValue()).toBe('6 s');
    const called = breath.getByLabel('called');
    await called.fill('In and out');
    await called.press('Enter');
    await page.getByLabel('In and out, exactly').waitFor();
    expect(await nextUndo(page)).toBe('Undo: Set parameters of pattern my sleeper');

    // Two clips take turns on one track, so the first of them cannot go on for ever.
    await page.locator('.swatch', { hasText: 'High tide' }).click();
    await page.getByRole('button', { name: /^Tide, track tide, 0 s/ }).click();
    await page.getByText('More about this clip').click();
    const endless = page.getByRole('checkbox', { name: 'Endless' });
    await endless.click();
    const row = page.locator('.figure-row', { has: endless });
    await row.getByRole('alert').waitFor();
    expect(await row.getByRole('alert').innerText()).toContain('begins before another one');
    expect(await endless.isChecked()).toBe(false);
  });
}
