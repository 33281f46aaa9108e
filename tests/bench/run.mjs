/** `npm run bench [-- --update]`: bundles the benchmark and runs it, as Node 20 reads no TypeScript. */
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'esbuild';

const root = fileURLToPath(new URL('../..', import.meta.url));
const outfile = join(root, 'node_modules/.cache/weftlight', `bench-${process.pid}.mjs`);
mkdirSync(join(outfile, '..'), { recursive: true });
process.on('exit', () => rmSync(outfile, { force: true }));
await build({
  entryPoints: [join(root, 'tests/bench/main.ts')],
  outfile,
  bundle: true,
  platform: 'node',
  format: 'esm',
  target: 'node20',
  packages: 'external',
  loader: { '.glsl': 'text', '.cpp': 'text' },
  logLevel: 'error',
});
process.chdir(root);

await import(pathToFileURL(outfile).href);
