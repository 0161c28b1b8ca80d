import module from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/*
 * Where a log's worker starts. What was compiled for the last one is taken up again: from the sources that is more
 * than half of the start. The cache is its own and is written once, when there was power to work out: what other
 * programs leave in a shared one lacks most of what a big log needs, and stays that way. A packed program holds its
 * work in one file, and where no cache can be kept all is as without.
 */
module.enableCompileCache(join(tmpdir(), 'node-compile-cache', 'onechange-log-worker'));
const { firstPower } = await import('./log-work.ts');
await firstPower;
module.flushCompileCache();
