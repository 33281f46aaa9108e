/** What the page keeps to: its own origin, its policy, and everybody's reach. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { axeFindings } from './axe.ts';
import { eventually, type House, sizes, visit } from './visit.ts';

/** Widest of the page against the window. */
function overhang(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
}

export function testKeeping(house: () => House): void {
  test('W10 the page asks no other origin for anything, and nothing offends its policy', async () => {
    const { page, complaints, strangers } = await visit(house());
    await page.getByRole('button', { name: 'Show the source' }).click();
    await page.locator('.code-pane[data-ready="true"]').waitFor();
    await page.getByRole('button', { name: 'Firmware' }).click();
    await page.locator('.code-pane[data-ready="true"]').waitFor();
    await page.locator('.swatch').nth(2).click();
    await page.waitForTimeout(500);
    expect(strangers).toEqual([]);
    expect(complaints).toEqual([]);
  });

  test('W10 the page can neither evaluate text nor call out, while its workers play', async () => {
    const { page, complaints } = await visit(house());
    const verdict = await page.evaluate(async () => {
      // In a task of its own, as what the debugger calls directly is not bound by the policy.
      const evaluated = await new Promise<string>((resolve) => {
        setTimeout(() => {
          try {
            new Function('return 1')();
            resolve('allowed');
          } catch (error) {
            resolve((error as Error).name);
          }
        });
      });
      const called = await fetch('https://example.invalid/').then(
        () => 'allowed',
        () => 'refused',
      );
      return { evaluated, called };
    });
    expect(verdict).toEqual({ evaluated: 'EvalError', called: 'refused' });
    expect(complaints.join('\n')).toContain('Content Security Policy');
  });

  for (const [name, viewport] of Object.entries(sizes)) {
    test(`W14 at ${viewport.width} by ${viewport.height} nothing is out of reach (${name})`, async () => {
      const { page } = await visit(house(), { viewport });
      expect(await overhang(page)).toBeLessThanOrEqual(0);
      expect(await axeFindings(page)).toEqual([]);

      await page.getByRole('button', { name: 'Show the source' }).click();
      await page.locator('.code-pane[data-ready="true"]').waitFor();
      await page.locator('.cautions button').click();
      await page.locator('.caution-panel').waitFor();
      expect(await overhang(page)).toBeLessThanOrEqual(0);
      expect(await axeFindings(page)).toEqual([]);
      await page.keyboard.press('Escape');

      await page.getByRole('button', { name: 'Firmware' }).click();
      await page.locator('.code-pane[data-ready="true"]').waitFor();
      expect(await overhang(page)).toBeLessThanOrEqual(0);
      expect(await axeFindings(page)).toEqual([]);

      await page.setInputFiles('input[type="file"]', {
        name: 'broken.piece.json',
        mimeType: 'application/json',
        buffer: Buffer.from('{"version": 1, "looks": []}'),
      });
      await page.getByRole('dialog').waitFor();
      expect(await overhang(page)).toBeLessThanOrEqual(0);
      expect(await axeFindings(page)).toEqual([]);
    });
  }

  test('W14 on a phone the buttons of the piece are as large as a thumb, and the figures stay in view', async () => {
    const { page } = await visit(house(), { viewport: sizes.phone, hasTouch: true });
    // 44 CSS pixels: target size of WCAG 2.2, success criterion 2.5.5.
    for (const control of await page
      .locator('.piece-button button, .transport, .house button:visible')
      .all()) {
      const box = await control.boundingBox();
      expect(Math.min(box!.width, box!.height), await control.innerText()).toBeGreaterThanOrEqual(44);
    }
    await page.mouse.wheel(0, 2000);
    await eventually(() => page.evaluate(() => window.scrollY)).toBeGreaterThan(100);
    const figures = await page.locator('.figures').boundingBox();
    expect(figures!.y + figures!.height).toBeLessThanOrEqual(sizes.phone.height);
  });

  test('W14 the keyboard reaches every control in turn', async () => {
    const { page } = await visit(house());
    // The figures of the chip come last, with questions of their own.
    await page.locator('.figures .of-chip').last().waitFor();
    const controls = await page.evaluate(
      () =>
        document.querySelectorAll(
          'button:not(:disabled, [tabindex="-1"]), summary, select, input:not([type="file"]), [role="slider"][tabindex="0"]',
        ).length,
    );
    const reached = new Set<string>();
    for (let i = 0; i < controls + 5; i++) {
      await page.keyboard.press('Tab');
      const mark = await page.evaluate(() => {
        const at = document.activeElement as HTMLElement | null;
        if (at === null || at === document.body) return '';
        at.dataset.reached = '1';
        const { outlineStyle, outlineWidth } = getComputedStyle(at);
        return `${outlineStyle} ${outlineWidth}`;
      });
      if (mark !== '') reached.add(mark);
    }
    expect([...reached].filter((mark) => mark.startsWith('none'))).toEqual([]);
    expect(await page.locator('[data-reached]').count()).toBe(controls);
  });
}
