import { builtinModules } from 'node:module';
import { basename, join } from 'node:path';
import { defineConfig, type Plugin } from 'vite';

const here = import.meta.dirname;
const outside = ['electron', /^electron\//, /^node:/, ...builtinModules];

/**
 * The desktop shell's own scripts, each in one file: Electron runs no TypeScript, and a sandboxed preload may
 * load nothing but itself. `--mode preload` builds the preload script, any other mode the main process.
 */
export default defineConfig(({ mode }) => ({
  root: here,
  plugins: mode === 'preload' ? [] : [nodeWorkers()],
  ssr: { noExternal: true },
  build: {
    ssr: true,
    outDir: 'dist',
    // The other mode's file stands in the same folder.
    emptyOutDir: false,
    target: 'node24',
    minify: false,
    rolldownOptions:
      mode === 'preload'
        ? {
            input: join(here, 'preload.ts'),
            external: outside,
            output: { format: 'cjs', entryFileNames: 'preload.cjs' },
          }
        : {
            input: join(here, 'main.ts'),
            external: outside,
            output: { format: 'es', entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' },
          },
  },
}));

/** Builds each script named as `new Worker(new URL('./x.ts', import.meta.url)` into a file beside main. */
function nodeWorkers(): Plugin {
  return {
    name: 'node-workers',
    // Before types are stripped, which changes how a string is quoted.
    enforce: 'pre',
    async transform(code, id) {
      const pattern = /new Worker\(new URL\('(\.\/[\w-]+)\.ts', import\.meta\.url\)/g;
      const names = [...code.matchAll(pattern)].map((match) => match[1] as string);
      for (const name of names) {
        const resolved = await this.resolve(`${name}.ts`, id);
        if (resolved) this.emitFile({ type: 'chunk', id: resolved.id, fileName: `${basename(name)}.mjs` });
      }
      return names.length === 0
        ? null
        : code.replaceAll(pattern, "new Worker(new URL('$1.mjs', import.meta.url)");
    },
  };
}
