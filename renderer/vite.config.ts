import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';
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
