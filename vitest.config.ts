import { defineConfig } from 'vitest/config';
import { sourcesAsText } from './vite.config.ts';

export default defineConfig({
  plugins: [sourcesAsText()],
  test: {
    include: ['tests/**/*.test.ts'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
