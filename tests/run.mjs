/**
 * `npm test`, complete on a fresh machine: fetches what is missing, then checks types, style and everything else.
 * Only Node's own modules here, as the packages may still be on their way. Further arguments go to vitest.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { provideTools } from './run/tools.mjs';

/** What vite asks for. */
const oldestNode = [20, 19];
const root = fileURLToPath(new URL('..', import.meta.url));
const notes = join(root, 'node_modules/.cache/weftlight');
const reportFile = join(notes, 'tests.json');
/** What `.ci/run` prints last. */
const countFile = join(notes, 'tests.txt');

function run(command, args) {
  const env = { ...process.env, WEFTLIGHT_TEST_REPORT: reportFile };
  return spawnSync(command, args, { cwd: root, stdio: 'inherit', env }).status === 0;
}

const runPackage = (name, ...args) => run(join(root, 'node_modules/.bin', name), args);

function provide() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < oldestNode[0] || (major === oldestNode[0] && minor < oldestNode[1])) {
    return `The tests need Node ${oldestNode.join('.')} or newer, and this is ${process.version}.`;
  }
  if (!packagesAreCurrent() && !run('npm', ['ci'])) return 'npm ci has failed; see above.';
  return provideTools();
}

/** npm writes this file when an installation is complete. */
function packagesAreCurrent() {
  const installed = join(root, 'node_modules/.package-lock.json');
  return (
    existsSync(installed) && statSync(installed).mtimeMs >= statSync(join(root, 'package-lock.json')).mtimeMs
  );
}

const checks = [
  ['the types of engine', () => runPackage('tsc', '-p', 'engine')],
  ['the types of codegen', () => runPackage('tsc', '-p', 'codegen')],
  ['the types of the whole', () => runPackage('tsc', '-p', '.')],
  ['the style', () => runPackage('biome', 'ci', '--error-on-warnings')],
];

/** Runs the tests; a test that did not run has not passed, unless somebody chose tests by name. */
function countTests(vitestArguments) {
  const reporters = ['--reporter=default', '--reporter=./tests/run/reporter.mjs'];
  const fine = runPackage('vitest', 'run', ...reporters, ...vitestArguments);
  if (!existsSync(reportFile)) return { passed: 0, failed: 1 };
  const { passed, failed, skipped } = JSON.parse(readFileSync(reportFile, 'utf8'));
  const chosen = vitestArguments.some((word) => /^(-t|--testNamePattern)/.test(word));
  const left = chosen ? 0 : skipped;
  if (left > 0) console.error(`Tests that were skipped: ${left}. They count as failed.`);
  return { passed, failed: Math.max(failed + left, fine ? 0 : 1) };
}

const missing = provide();
if (missing !== null) {
  console.error(missing);
  process.exit(1);
}
mkdirSync(notes, { recursive: true });
rmSync(reportFile, { force: true });
const broken = checks.filter(([, check]) => !check()).map(([name]) => name);
const { passed, failed } = countTests(process.argv.slice(2));
if (broken.length > 0) console.error(`Not in order: ${broken.join(', ')}.`);
// Types and style count as one failure each, so that the last line never looks better than the truth.
const count = `${passed} passed, ${failed + broken.length} failed`;
writeFileSync(countFile, `${count}\n`);
console.log(count);
process.exit(failed + broken.length === 0 ? 0 : 1);
