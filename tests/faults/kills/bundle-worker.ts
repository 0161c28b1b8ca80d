import { join } from 'node:path';
import { build } from 'vite';
import { projectFolder } from '../../../electron/launch/pinned-node.mjs';

/**
 * Puts the worker and all that it imports into one file. It is started again for every kill, and Node spent twice as
 * long on finding and reading its hundreds of modules one by one as on everything else.
 *
 * @returns path of the script
 */
export async function bundleWorker(folder: string): Promise<string> {
  const name = 'worker.mjs';
  const outDir = join(folder, 'worker');
  await build({
    configFile: false,
    root: projectFolder,
    logLevel: 'error',
    ssr: { noExternal: true },
    build: {
      ssr: join(import.meta.dirname, 'worker.ts'),
      outDir,
      target: 'node24',
      minify: false,
      rolldownOptions: { output: { entryFileNames: name } },
    },
  });
  return join(outDir, name);
}
