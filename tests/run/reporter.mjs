/** Counts what became of every test, for `tests/run.mjs`; a file that could not even be loaded counts as failed. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

export default class CountingReporter {
  onTestRunEnd(modules, unhandledErrors) {
    const count = { passed: 0, failed: unhandledErrors.length, skipped: 0 };
    for (const module of modules) {
      if (module.errors().length > 0) count.failed += 1;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        count[state === 'passed' || state === 'failed' ? state : 'skipped'] += 1;
      }
    }
    const file = process.env.WEFTLIGHT_TEST_REPORT;
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, JSON.stringify(count));
  }
}
