// `npm run package`. Plain JavaScript without dependencies, for a fresh clone on the machine's own Node.
import { installWhatIsMissing } from './install.mjs';
import { handOver, projectFolder } from './pinned-node.mjs';

if (installWhatIsMissing(projectFolder, console.log)) {
  handOver('electron/launch/package.ts', process.argv.slice(2));
} else {
  process.exitCode = 1;
}
