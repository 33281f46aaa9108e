/** A browser at the served page, and everything that may be observed from outside while it is used. */
import type { BrowserContextOptions, Page } from 'playwright-core';
import { expect, onTestFinished } from 'vitest';
import type { StageReply } from '../../../app/web/worker/protocol.ts';
import type { House } from './house.ts';

export type { House } from './house.ts';

/** The frames of the last seconds, as the stage handed them to the page. */
export type HeardMoment = Extract<StageReply, { kind: 'moment' }>;

export interface Visit {
  readonly page: Page;
  /** Errors and warnings of the console, policy violations among them, and uncaught errors. */
  readonly complaints: string[];
  /** Addresses that were asked for, this page's own origin left out. */
  readonly strangers: string[];
}

export const sizes = {
  desk: { width: 1440, height: 900 },
  laptop: { width: 1024, height: 768 },
  phone: { width: 390, height: 844 },
} as const;

/** For visits on which the piece plays. */
export const moving = { reducedMotion: 'no-preference' } as const;

/**
 * Opens the page and waits until the first sample's picture has been lit. It stands still unless a test asks
 * for a `moving` one: a picture that is drawn all the time takes the processor from everything else.
 */
export async function visit(house: House, options: BrowserContextOptions = {}): Promise<Visit> {
  const context = await house.browser.newContext({
    viewport: sizes.desk,
    reducedMotion: 'reduce',
    ...options,
  });
  onTestFinished(() => context.close());
  const page = await context.newPage();
  const complaints: string[] = [];
  const strangers: string[] = [];
  page.on('console', (message) => {
    const complains = message.type() === 'error' || message.type() === 'warning';
    if (complains && !isReadback(message.text())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  context.on('request', (request) => {
    const url = request.url();
    const own = url.startsWith(house.address) || url.startsWith('blob:') || url.startsWith('data:');
    if (!own) strangers.push(url);
  });
  await page.addInitScript(listenToStage);
  await page.goto(house.address);
  await page.waitForSelector('.piece-button');
  await page.waitForFunction(() => (window as unknown as Heard).heard.some(({ frame }) => frame !== null));
  return { page, complaints, strangers };
}

/** A visit that stands at the start of the first look. */
export async function stillVisit(house: House): Promise<Visit> {
  const visited = await visit(house);
  await visited.page.getByRole('button', { name: 'Play' }).waitFor();
  await eventually(async () => (await lastHeard(visited.page)).moment.ms).toBe(0);
  return visited;
}

/** Where the processor draws, the browser reads the picture back to lay it on the page, and says so itself. */
function isReadback(text: string): boolean {
  return text.includes('GPU stall due to ReadPixels');
}

interface Heard {
  heard: HeardMoment[];
}

/** Runs in the page before its own scripts: keeps what the stage says, and changes nothing of it. */
function listenToStage(): void {
  const heard: unknown[] = [];
  (window as unknown as { heard: unknown[] }).heard = heard;
  const Plain = window.Worker;
  window.Worker = class extends Plain {
    constructor(url: string | URL, options?: WorkerOptions) {
      super(url, options);
      if (options?.name !== 'stage') return;
      this.addEventListener('message', ({ data }) => {
        if (data.kind !== 'moment') return;
        heard.push(data);
        if (heard.length <= 400) return;
        // While it stands still nothing is drawn anew; what was drawn last stays known.
        const drawn = heard.splice(0, 200).filter((old) => (old as { frame: unknown }).frame !== null);
        heard.unshift(...drawn.slice(-1));
      });
    }
  };
}

/** The last moment with a frame, and the moment that the page is at now. */
export function lastHeard(
  page: Page,
): Promise<{ moment: HeardMoment['moment']; drive: number[]; levels: number[] }> {
  return page.evaluate(() => {
    const { heard } = window as unknown as Heard;
    const drawn = heard.filter(({ frame }) => frame !== null).at(-1)!;
    return {
      moment: heard.at(-1)!.moment,
      drive: [...drawn.frame!.drive],
      levels: [...drawn.frame!.levels],
    };
  });
}

/** For what takes the page a moment; a busy machine may need many. */
export function eventually<T>(read: () => T | Promise<T>) {
  return expect.poll(read, { timeout: 20_000, interval: 50 });
}

/** What assistive technology was told last. */
export function told(page: Page): Promise<string> {
  return page.locator('p[aria-live="polite"]').innerText();
}

export async function untilTold(page: Page, text: string): Promise<void> {
  await page.waitForFunction(
    (wanted) => document.querySelector('p[aria-live="polite"]')?.textContent?.includes(wanted),
    text,
    { timeout: 20_000 },
  );
}

/** As a file, which is the shorter way. Runs from the project's folder. */
export async function openSample(page: Page, name: string, pieceName: string): Promise<void> {
  await page.setInputFiles('input[type="file"]', `samples/${name}.piece.json`);
  await page.waitForFunction(
    (wanted) => document.querySelector('.piece-name b')?.textContent === wanted,
    pieceName,
  );
}
