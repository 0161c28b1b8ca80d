import { lint, types } from './command-stages.ts';
import { endToEndStage } from './end-to-end-stage.ts';
import { endRunningCommands } from './run-command.ts';
import { alone, counts, countsLine, failedOnly, type JointStages, type StageResult } from './stage.ts';
import { vitestStages } from './vitest-stages.ts';

const say = (line: string): void => console.log(line);
process.stdout.on('error', () => {});

const stages: readonly JointStages[] = [
  alone(lint),
  alone(types),
  vitestStages(['layers', 'unit', 'reference', 'property', 'faults']),
  alone(endToEndStage(say)),
];

const chosen = process.argv.slice(2);
const all = stages.flatMap(({ names }) => names);
const unknown = chosen.filter((name) => !all.includes(name));
if (unknown.length > 0) {
  say(`No stage is named ${unknown.join(', ')}. There are: ${all.join(', ')}.`);
  process.exit(2);
}

for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => stop());
process.on('disconnect', () => stop());

function stop(): void {
  endRunningCommands();
  say('Stopped before the end.');
  process.exit(130);
}

type Row = { readonly name: string; readonly result: StageResult; readonly time: string };

const results: Row[] = [];
for (const stage of stages) {
  const names = stage.names.filter((name) => chosen.length === 0 || chosen.includes(name));
  if (names.length === 0) continue;
  const title = names.join(', ');
  say(`\n== ${title}`);
  const start = performance.now();
  const found = await stage
    .run(names)
    .catch((error: Error) => new Map([[title, failedOnly(`${title}: ${error.stack}`)]]));
  const time = `${((performance.now() - start) / 1000).toFixed(1)} s`;
  const last = [...found.keys()].at(-1);
  for (const [name, result] of found) {
    // What ran at once has one time.
    results.push({ name, result, time: name === last ? time : '' });
    for (const failure of result.failures) say(`\nFAILED ${failure}`);
  }
}

say('\n== result');
for (const { name, time, result } of results)
  say(`${name.padEnd(12)} ${countsLine(counts([result])).padEnd(36)} ${time.padStart(8)}`.trimEnd());
for (const { result } of results) {
  for (const skip of result.skips) say(`skipped: ${skip}`);
  for (const failure of result.failures) say(`failed: ${failure.split('\n')[0]}`);
}
const total = counts(results.map(({ result }) => result));
say('');
say(countsLine(total));
process.exit(total.failed > 0 || total.passed === 0 ? 1 : 0);
