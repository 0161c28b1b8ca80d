import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/**
 * The workbench's bundle. `--mode gallery` builds the component gallery beside it instead, so that its invented
 * host never reaches what is shipped.
 */
export default defineConfig(({ mode }) => {
  const isGallery = mode === 'gallery';
  return {
    root: import.meta.dirname,
    // Relative, as the desktop shell and the loopback server mount it at different roots.
    base: './',
    plugins: [react()],
    build: {
      outDir: isGallery ? 'gallery/dist' : 'dist',
      emptyOutDir: true,
      target: 'es2024',
      // Fonts stay files: the policy allows fonts from the program itself only, and no data: URLs.
      assetsInlineLimit: 0,
      modulePreload: { polyfill: false },
      chunkSizeWarningLimit: 6000,
      rolldownOptions: isGallery
        ? {
            input: ['gallery/index.html', 'gallery/workbench.html'].map((f) => `${import.meta.dirname}/${f}`),
          }
        : { input: `${import.meta.dirname}/index.html` },
    },
    server: { host: '127.0.0.1', strictPort: true },
  };
});
