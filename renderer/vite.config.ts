import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin, type UserConfig } from 'vite';
import { unwrappedPlotly } from './unwrap-plotly.ts';

/** The languages of the workbench, and the one that the component library falls back on. */
const languages = new Set(['en-GB', 'de-DE', 'en-US']);

/** The component library brings its few words in 34 languages; the others are left out of the bundle. */
const onlyOurLanguages: Plugin = {
  name: 'only-our-languages',
  enforce: 'pre',
  load: {
    filter: {
      id: /[\\/]react-(?:aria|stately)(?:-components)?[\\/].*[\\/]intl[\\/].*[\\/]?[a-z]{2}-[A-Z]{2}\.m?js$/,
    },
    handler(id) {
      const language = /([a-z]{2}-[A-Z]{2})\.m?js$/.exec(id)?.[1];
      return language === undefined || languages.has(language) ? null : 'export default {};';
    },
  },
};

/**
 * The component library asks whether the browser knows its own language by way of the dates of all languages, which
 * takes the engine a while at every start. A tag that is none fails the other way as well.
 */
const localeWithoutDates: Plugin = {
  name: 'locale-without-dates',
  transform: {
    filter: { id: /[\\/]react-aria[\\/].*[\\/]i18n[\\/]useDefaultLocale\.m?js$/ },
    handler(code) {
      const quick = code.replace('Intl.DateTimeFormat.supportedLocalesOf(', 'Intl.getCanonicalLocales(');
      if (quick === code) this.warn('the locale is asked for in another way than before: see vite.config.ts');
      return quick === code ? null : { code: quick, map: null };
    },
  },
};

/** The script with which the host draws the first screen ahead; nothing that is fetched on demand is in it. */
const pictureBuild: UserConfig = {
  root: import.meta.dirname,
  plugins: [react(), onlyOurLanguages],
  publicDir: false,
  ssr: { noExternal: true },
  // Else the slow, talkative react is in it as well.
  define: { 'process.env.NODE_ENV': '"production"' },
  build: {
    ssr: 'picture/draw.tsx',
    outDir: 'picture/dist',
    emptyOutDir: true,
    target: 'node24',
    minify: false,
    rolldownOptions: {
      external: ['plotly.js-dist-min', 'temml', /^mathjs/],
      output: { entryFileNames: 'draw.mjs' },
    },
  },
};

/**
 * The workbench's bundle. `--mode gallery` builds the component gallery beside it instead, so that its invented
 * host never reaches what is shipped.
 */
export default defineConfig(({ mode }) => {
  if (mode === 'picture') return pictureBuild;
  const isGallery = mode === 'gallery';
  return {
    root: import.meta.dirname,
    // Relative, as the desktop shell and the loopback server mount it at different roots.
    base: './',
    plugins: [react(), onlyOurLanguages, localeWithoutDates, unwrappedPlotly],
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
