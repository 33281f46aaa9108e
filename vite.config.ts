import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

/** Imports pattern sources (.glsl) and sketch parts (.inc.cpp) as text, in the app and in the tests alike. */
export function sourcesAsText(): Plugin {
  return {
    name: 'sources-as-text',
    transform(code, id) {
      if (!/\.(glsl|inc\.cpp)$/.test(id)) return null;
      return { code: `export default ${JSON.stringify(code)};`, map: null };
    },
  };
}

export default defineConfig({
  root: 'app/web',
  plugins: [sourcesAsText(), react()],
  worker: { format: 'es', plugins: () => [sourcesAsText()] },
  build: { outDir: '../../dist', emptyOutDir: true },
});
