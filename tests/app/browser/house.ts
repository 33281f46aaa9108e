/** The page as `npm start` builds and serves it, and a real browser beside it. */
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

/** As on a computer without a graphics card: the processor draws all, WebGL by SwiftShader. */
const flags = [
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--enable-unsafe-swiftshader',
];

export interface House {
  readonly address: string;
  readonly browser: Browser;
  close(): Promise<void>;
}

/**
 * Builds and serves the page as `npm start` does, on any free port, from a folder of its own, so that nothing
 * else that is built meanwhile disturbs it. Runs from the project's folder.
 */
export async function openHouse(): Promise<House> {
  const root = process.cwd();
  const folder = await mkdtemp(join(tmpdir(), 'weftlight-page-'));
  const server = spawn(process.execPath, [join(root, 'app/start.mjs')], {
    cwd: root,
    env: { ...process.env, PORT: '0', WEFTLIGHT_DIST: folder },
  });
  const address = await addressOf(server);
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: flags });
  return {
    address,
    browser,
    async close() {
      await browser.close();
      server.kill();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

/** The address in the last line that a server prints. */
export function addressOf(server: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let printed = '';
    let complaints = '';
    server.stdout!.on('data', (chunk) => {
      printed += chunk;
      const lastLine = printed.trimEnd().split('\n').at(-1) ?? '';
      const address = /http:\/\/\S+/.exec(lastLine);
      if (address !== null && printed.endsWith('\n')) resolve(address[0]);
    });
    server.stderr!.on('data', (chunk) => {
      complaints += chunk;
    });
    server.on('exit', (code) => reject(new Error(`The server ended with ${code}: ${printed}${complaints}`)));
  });
}
