import module from 'node:module';

/*
 * Where a log's worker starts. What was compiled for the last one is taken up again: from the sources that is more
 * than half of the start. A packed program holds its work in one file, and where no cache can be kept all is as
 * without.
 */
module.enableCompileCache();
await import('./log-work.ts');
module.flushCompileCache();
