/** `npm start` and the file server. Rules: app/web/SPEC.md. */
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { builtinModules } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { servePage } from '../../app/serve.mjs';

const folder = mkdtempSync(join(tmpdir(), 'weftlight-serve-'));
mkdirSync(join(folder, 'dist/assets'), { recursive: true });
writeFileSync(join(folder, 'dist/index.html'), '<!doctype html>a page');
writeFileSync(join(folder, 'dist/assets/index-abc.js'), '1');
writeFileSync(join(folder, 'dist/assets/thread-abc.js'), '2');
writeFileSync(join(folder, 'secret.txt'), 'not yours');
const address = await servePage(join(folder, 'dist'), 0);

afterAll(() => rmSync(folder, { recursive: true }));

/** A path exactly as written: `fetch` would tidy it up first. */
function rawStatus(path: string): Promise<number> {
  const { hostname, port } = new URL(address);
  return new Promise((resolve, reject) => {
    request({ hostname, port, path }, (response) => resolve(response.statusCode!))
      .on('error', reject)
      .end();
  });
}

test('W15 the page is served to this machine alone, with its type', async () => {
  expect(new URL(address).hostname).toBe('127.0.0.1');
  const response = await fetch(address);
  expect(response.headers.get('content-type')).toBe('text/html; charset=utf-8');
  expect(await response.text()).toBe('<!doctype html>a page');
  expect((await fetch(`${address}missing.js`)).status).toBe(404);
  expect((await fetch(address, { method: 'POST' })).status).toBe(405);
});

test('W15 nothing outside of the folder is served', async () => {
  for (const path of [
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/assets/..%2f..%2fsecret.txt',
    '/..%5csecret.txt',
  ]) {
    expect(await rawStatus(path), path).toBe(404);
  }
  expect(await rawStatus('/%E0%A4%A')).toBe(400);
});

test('W10 only the two workers may evaluate, by their own policy', async () => {
  const policy = async (file: string) =>
    (await fetch(`${address}assets/${file}`)).headers.get('content-security-policy');
  expect(await policy('thread-abc.js')).toContain("'unsafe-eval'");
  expect(await policy('index-abc.js')).toBe("default-src 'none'; script-src 'self'; connect-src 'self'");
});

test('W15 a port that is asked for and taken is an error, not another port', async () => {
  const taken = Number(new URL(address).port);
  await expect(servePage(join(folder, 'dist'), taken)).rejects.toMatchObject({ code: 'EADDRINUSE' });
});

test('W15 before anything is installed, starting needs nothing but Node', () => {
  for (const file of ['app/start.mjs', 'app/serve.mjs']) {
    const source = readFileSync(join(import.meta.dirname, '../..', file), 'utf8');
    const imported = [...source.matchAll(/from '([^']+)'/g)].map(([, name]) => name!);
    expect(imported.length).toBeGreaterThan(2);
    for (const name of imported) {
      const fromNode = name.startsWith('node:') && builtinModules.includes(name.slice(5));
      expect(fromNode || name === './serve.mjs', name).toBe(true);
    }
  }
});
