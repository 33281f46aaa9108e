/** The four figures of the page: drag, play, first light, first JavaScript. */
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import type { PieceInput } from '../../../engine/piece/schema.ts';
import { calibrate } from './calibrate.ts';
import { type Delays, delaysOf, median } from './delays.ts';
import { largePiece } from './pieces.ts';
import { takeSeen, watch } from './watch.ts';

export interface Site {
  readonly address: string;
  readonly browser: Browser;
}

const moves = 60;
const millisecondsAMove = 33;
const playedSeconds = 5;
const visits = 7;

/** Turns a parameter of the clip in hand by pointer, while a piece of 500 pixels and eight tracks plays. */
export function measureDrag(site: Site): Promise<Delays & { calibration: number }> {
  return withPiece(site, largePiece(500), async (page) => {
    const calibration = await calibrate(page);
    const slider = page.getByRole('slider', { name: 'Tail' });
    await slider.scrollIntoViewIfNeeded();
    const box = (await slider.boundingBox())!;
    const y = box.y + box.height / 2;
    // To and fro in steps wide enough that each is another value.
    const xOf = (move: number) => box.x + box.width * (0.5 + 0.35 * Math.sin(move / 5));
    await page.mouse.move(xOf(0), y);
    await page.mouse.down();
    await page.waitForTimeout(1000);
    await takeSeen(page);
    for (let move = 1; move <= moves; move++) {
      await page.mouse.move(xOf(move), y);
      await page.waitForTimeout(millisecondsAMove);
    }
    await page.waitForTimeout(1500);
    await page.mouse.up();
    const delays = delaysOf(await takeSeen(page), '0.0.0');
    if (delays.both.length < 40) throw new Error(`Only ${delays.both.length} moves were seen to the end.`);
    return { ...delays, calibration };
  });
}

/** Frames a second that the picture draws and the browser finishes, with 1000 pixels. */
export function measurePlay(site: Site): Promise<{ framesASecond: number; calibration: number }> {
  return withPiece(site, largePiece(1000), async (page) => {
    const calibration = await calibrate(page);
    await takeSeen(page);
    await page.waitForTimeout(playedSeconds * 1000);
    const seen = await takeSeen(page);
    const drawn = seen.filter(({ what }, index) => what === 'shown' && hasPicture(seen, index));
    return { framesASecond: drawn.length / playedSeconds, calibration };
  });
}

/** Whether the picture was drawn between the frame before and this one. */
function hasPicture(seen: Awaited<ReturnType<typeof takeSeen>>, shown: number): boolean {
  for (let at = shown - 1; at >= 0 && seen[at]!.what !== 'shown'; at--) {
    if (seen[at]!.what === 'picture') return true;
  }
  return false;
}

/** From navigation to the first lit frame on screen, in a fresh profile each time. */
export async function measureFirstLight(site: Site): Promise<{ milliseconds: number; calibration: number }> {
  const times: number[] = [];
  const calibrations: number[] = [];
  for (let visit = 0; visit < visits; visit++) {
    await withPage(site, async (page) => {
      times.push(await firstLight(page, site.address));
      calibrations.push(await calibrate(page));
    });
  }
  return { milliseconds: median(times), calibration: median(calibrations) };
}

/** All the JavaScript that a page fetches which nobody touches, workers included, each file gzipped. */
export async function measureFirstScripts(site: Site): Promise<ReadonlyMap<string, number>> {
  const fetched = new Map<string, number>();
  // Between browser and server: what workers import is not told to the page's debugger.
  const between = createServer(async ({ url = '/' }, response) => {
    const answer = await fetch(site.address + url.slice(1));
    const body = Buffer.from(await answer.arrayBuffer());
    if (url.endsWith('.js')) fetched.set(url, (fetched.get(url) ?? 0) + gzipSync(body, { level: 9 }).length);
    const { 'content-encoding': _, ...headers } = Object.fromEntries(answer.headers);
    response.writeHead(answer.status, headers).end(body);
  });
  await new Promise<void>((resolve) => between.listen(0, '127.0.0.1', resolve));
  try {
    const { port } = between.address() as AddressInfo;
    await withPage(site, async (page) => {
      await firstLight(page, `http://127.0.0.1:${port}/`);
      await page.waitForTimeout(3000);
    });
  } finally {
    between.close();
  }
  return fetched;
}

/** Opens the page and tells when its picture was first lit. */
async function firstLight(page: Page, address: string): Promise<number> {
  await watch(page);
  await page.goto(address);
  const seen: Awaited<ReturnType<typeof takeSeen>> = [];
  for (let wait = 0; wait < 300; wait++) {
    seen.push(...(await takeSeen(page)));
    const lit = seen.findIndex((one) => one.what === 'frame' && one.lit);
    const drawn = seen.findIndex(({ what }, index) => lit >= 0 && index > lit && what === 'picture');
    const shown = seen.find(({ what }, index) => drawn >= 0 && index > drawn && what === 'shown');
    if (shown !== undefined) return shown.at;
    await page.waitForTimeout(50);
  }
  throw new Error('The picture stayed dark.');
}

/** @returns what is measured once the piece plays and all its cloths are woven */
async function withPiece<T>(site: Site, piece: PieceInput, use: (page: Page) => Promise<T>): Promise<T> {
  return withPage(site, async (page) => {
    await firstLight(page, site.address);
    await page.setInputFiles('input[type="file"]', {
      name: 'large.piece.json',
      mimeType: 'application/json',
      buffer: Buffer.from(JSON.stringify(piece)),
    });
    await page.getByText(piece.name, { exact: true }).first().waitFor();
    await page.waitForTimeout(5000);
    return use(page);
  });
}

async function withPage<T>(site: Site, use: (page: Page) => Promise<T>): Promise<T> {
  const context = await site.browser.newContext({ viewport: { width: 1440, height: 900 } });
  try {
    const page = await context.newPage();
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(String(error)));
    const result = await use(page);
    if (faults.length > 0) throw new Error(faults[0]);
    return result;
  } finally {
    await context.close();
  }
}
