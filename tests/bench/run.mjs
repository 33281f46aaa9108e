/** `npm run bench [-- --update]`: the benchmark. */
import { fileURLToPath } from 'node:url';
import { runTypeScript } from '../../app/cli/run-typescript.mjs';

process.chdir(fileURLToPath(new URL('../..', import.meta.url)));
await runTypeScript('tests/bench/main.ts');
