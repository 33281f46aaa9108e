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

/** The development server refreshes modules by inline scripts, which the page's own policy forbids. */
function policyInBuildsOnly(): Plugin {
  return {
    name: 'policy-in-builds-only',
    apply: 'serve',
    transformIndexHtml: (html) => html.replace(/<meta\s+http-equiv="Content-Security-Policy"[^>]*>/, ''),
  };
}

export default defineConfig({
  root: 'app/web',
  plugins: [sourcesAsText(), react(), policyInBuildsOnly()],
  worker: { format: 'es', plugins: () => [sourcesAsText()] },
  build: {
    outDir: '../../dist',
    emptyOutDir: true,
    target: 'es2022',
    // The code editor is large, comes in a file of its own, and loads only where code is shown.
    chunkSizeWarningLimit: 4000,
    // How long plugins took is nothing for a maker who starts the page.
    rolldownOptions: { checks: { pluginTimings: false } },
  },
});
