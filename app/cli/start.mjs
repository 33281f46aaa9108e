// `npm run weftlight`: the command line.
import { runTypeScript } from './run-typescript.mjs';

await runTypeScript('app/cli/main.ts');
