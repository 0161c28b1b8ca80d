// `npm test`. Plain JavaScript without dependencies, for a fresh clone on the machine's own Node.
import { installWhatIsMissing } from '../electron/launch/install.mjs';
import { handOver, projectFolder } from '../electron/launch/pinned-node.mjs';

if (installWhatIsMissing(projectFolder, console.log)) {
  handOver('tests/runner/main.ts', process.argv.slice(2));
} else {
  console.log('0 passed, 1 failed');
  process.exitCode = 1;
}
