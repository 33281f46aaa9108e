// `npm start`: installs what is missing, builds the page, serves it, and prints its address last.
// Only Node's own modules until the packages are there.
import { spawnSync } from 'node:child_process';
import { existsSync, lstatSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { servePage } from './serve.mjs';

const root = join(dirname(fileURLToPath(import.meta.url)), '..');

function run(command, args) {
  const windows = process.platform === 'win32';
  const { status } = spawnSync(command, args, { cwd: root, stdio: 'inherit', shell: windows });
  if (status !== 0) process.exit(status ?? 1);
}

const packages = join(root, 'node_modules');
/** npm writes this file when an installation is complete. */
const installed = join(packages, '.package-lock.json');
const wanted = join(root, 'package-lock.json');
const isComplete = existsSync(installed) && statSync(installed).mtimeMs >= statSync(wanted).mtimeMs;
/** Packages that are linked in belong to another folder: an installation would empty that one. */
const isLinked = existsSync(packages) && lstatSync(packages).isSymbolicLink();
if (!isComplete && !isLinked) run('npm', ['ci']);

/** Two servers that are to build at the same time need a folder each: a build empties its own first. */
const folder = resolve(process.env.WEFTLIGHT_DIST ?? join(root, 'dist'));
const vite = join(root, 'node_modules/vite/bin/vite.js');
run(process.execPath, [vite, 'build', '--logLevel', 'warn', '--outDir', folder]);

const port = process.env.PORT === undefined ? null : Number(process.env.PORT);
if (port !== null && !(Number.isInteger(port) && port >= 0 && port <= 65_535)) {
  console.error(`PORT is "${process.env.PORT}"; it should be a number from 0 to 65535.`);
  process.exit(2);
}
try {
  const address = await servePage(folder, port);
  console.log(`Weftlight is ready: ${address}`);
} catch (error) {
  console.error(`The page cannot be served: ${error.message}`);
  process.exit(1);
}
