#!/usr/bin/env node
// Plain JavaScript on purpose: it must start under any Node that the machine has, and hand over to the pinned
// one where the host can't run the sources.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import module from 'node:module';
import { fileURLToPath } from 'node:url';

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
const isPinnedLine = major >= 24;
const runsSources = isPinnedLine || (major === 22 && minor >= 18) || major === 23;

const pinned = fileURLToPath(
  new URL(`../../node_modules/node/bin/node${process.platform === 'win32' ? '.exe' : ''}`, import.meta.url),
);

if (!isPinnedLine && existsSync(pinned)) {
  const run = spawnSync(pinned, [fileURLToPath(import.meta.url), ...process.argv.slice(2)], {
    stdio: 'inherit',
  });
  if (run.signal) process.kill(process.pid, run.signal);
  process.exitCode = run.status ?? 1;
} else if (!runsSources) {
  process.stderr.write(
    `onechange needs Node 22.18 or later; this is ${process.versions.node}.\n` +
      'Run "npm ci" in the project folder once: it brings a fitting Node along.\n',
  );
  process.exitCode = 1;
} else {
  module.enableCompileCache?.();
  const { main } = await import('./main.ts');
  process.exitCode = await main(process.argv.slice(2));
}
