// Bundles a TypeScript entry and runs it: Node 20 reads no TypeScript, and patterns are imported as text.
import { mkdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = join(dirname(fileURLToPath(import.meta.url)), '../..');

/** @param entry from the root of the project, such as `app/cli/main.ts` */
export async function runTypeScript(entry) {
  // Inside the project, so that packages are found from there; one file a process, so that runs do not meet.
  const outfile = join(root, 'node_modules/.cache/weftlight', `run-${process.pid}.mjs`);
  mkdirSync(dirname(outfile), { recursive: true });
  process.on('exit', () => rmSync(outfile, { force: true }));
  await build({
    entryPoints: [join(root, entry)],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    loader: { '.glsl': 'text', '.cpp': 'text' },
    logLevel: 'error',
  });
  await import(pathToFileURL(outfile).href);
}
