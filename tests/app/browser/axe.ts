/** The rule engine of Deque Systems, an outside judge of accessibility. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** All that it finds wrong outside of the code editor, whatever its weight, as `rule: element`. */
export async function axeFindings(page: Page): Promise<string[]> {
  await stillness(page);
  // Through the debugger, which the page's policy does not bind.
  await page.evaluate(source);
  const results = await page.evaluate(() => {
    const { axe } = window as unknown as {
      axe: { run(context: unknown, options: unknown): Promise<AxeResults> };
    };
    return axe.run({ exclude: ['.monaco-editor'] }, { resultTypes: ['violations'] });
  });
  expect(results.passes.length).toBeGreaterThan(10);
  return results.violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.html.slice(0, 160)}`),
  );
}

/** What fades in is judged when it is there: halfway it has too little contrast. */
async function stillness(page: Page): Promise<void> {
  await page.waitForFunction(() =>
    document.getAnimations().every((animation) => {
      const end = animation.effect?.getComputedTiming().endTime;
      return animation.playState !== 'running' || end === Number.POSITIVE_INFINITY;
    }),
  );
}
