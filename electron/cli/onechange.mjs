#!/usr/bin/env node
// Plain JavaScript on purpose: it must start under any Node that the machine has, and hand over to the pinned
// one where the host can't run the sources.
import { spawnSync } from 'node:child_process';
import module from 'node:module';
import { fileURLToPath } from 'node:url';
import { pinnedNode } from '../launch/pinned-node.mjs';

// A host as new as the pinned line runs the sources itself, which spares a start.
const isPinnedLine = Number(process.versions.node.split('.')[0]) >= 24;
const node = isPinnedLine ? process.execPath : pinnedNode();

if (node === undefined) {
  process.stderr.write(
    `onechange needs Node 22.18 or later; this is ${process.versions.node}.\n` +
      'Run "npm ci" in the project folder once: it brings a fitting Node along.\n',
  );
  process.exitCode = 1;
} else if (node !== process.execPath) {
  const run = spawnSync(node, [fileURLToPath(import.meta.url), ...process.argv.slice(2)], {
    stdio: 'inherit',
  });
  if (run.signal) process.kill(process.pid, run.signal);
  process.exitCode = run.status ?? 1;
} else {
  module.enableCompileCache?.();
  const { main } = await import('./main.ts');
  process.exitCode = await main(process.argv.slice(2));
}
