import { defineConfig } from 'vitest/config';
import { sourcesAsText } from './vite.config.ts';

export default defineConfig({
  plugins: [sourcesAsText()],
  test: {
    include: ['tests/**/*.test.ts'],
    // Emulators and compilers take their time, more so when all processors are busy.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    teardownTimeout: 30_000,
    pool: 'forks',
    maxWorkers: 2,
  },
});
