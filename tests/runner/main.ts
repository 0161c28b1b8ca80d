import { lint, types } from './command-stages.ts';
import { endToEndStage } from './end-to-end-stage.ts';
import { endRunningCommands } from './run-command.ts';
import { counts, countsLine, failedOnly, type Stage, type StageResult } from './stage.ts';
import { vitestStage } from './vitest-stage.ts';

const say = (line: string): void => console.log(line);
process.stdout.on('error', () => {});

const stages: readonly Stage[] = [
  lint,
  types,
  vitestStage('layers'),
  vitestStage('unit'),
  vitestStage('reference'),
  vitestStage('property'),
  vitestStage('faults'),
  endToEndStage(say),
];

const chosen = process.argv.slice(2);
const unknown = chosen.filter((name) => !stages.some((stage) => stage.name === name));
if (unknown.length > 0) {
  say(`No stage is named ${unknown.join(', ')}. There are: ${stages.map((stage) => stage.name).join(', ')}.`);
  process.exit(2);
}

for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => stop());
process.on('disconnect', () => stop());

function stop(): void {
  endRunningCommands();
  say('Stopped before the end.');
  process.exit(130);
}

const results: { readonly name: string; readonly seconds: number; readonly result: StageResult }[] = [];
for (const stage of stages) {
  if (chosen.length > 0 && !chosen.includes(stage.name)) continue;
  say(`\n== ${stage.name}`);
  const start = performance.now();
  const result = await stage.run().catch((error: Error) => failedOnly(`${stage.name}: ${error.stack}`));
  results.push({ name: stage.name, seconds: (performance.now() - start) / 1000, result });
  for (const failure of result.failures) say(`\nFAILED ${failure}`);
}

say('\n== result');
for (const { name, seconds, result } of results)
  say(`${name.padEnd(12)} ${countsLine(counts([result])).padEnd(36)} ${seconds.toFixed(1).padStart(6)} s`);
for (const { result } of results) {
  for (const skip of result.skips) say(`skipped: ${skip}`);
  for (const failure of result.failures) say(`failed: ${failure.split('\n')[0]}`);
}
const total = counts(results.map(({ result }) => result));
say('');
say(countsLine(total));
process.exit(total.failed > 0 || total.passed === 0 ? 1 : 0);
