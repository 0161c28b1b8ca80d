import { bench } from './bench.ts';
import { channels } from './channels.ts';
import { coastDown } from './coast-down.ts';
import { columns } from './columns.ts';
import { derived } from './derived.ts';
import { desktop } from './desktop.ts';
import { entry } from './entry.ts';
import { handover } from './handover.ts';
import { heat } from './heat.ts';
import { history } from './history.ts';
import { importing } from './import.ts';
import { ladder } from './ladder.ts';
import { leaning } from './leaning.ts';
import { ledger } from './ledger.ts';
import { mixture } from './mixture.ts';
import { move } from './move.ts';
import { now } from './now.ts';
import { plan } from './plan.ts';
import { planSheets } from './plan-sheets.ts';
import { ride } from './ride.ts';
import { setup } from './setup.ts';
import { sheet } from './sheet.ts';
import { shell } from './shell.ts';
import { start } from './start.ts';
import { tables } from './tables.ts';
import { units } from './units.ts';
import { watch } from './watch.ts';
import { whereFrom } from './where-from.ts';

export const screens = {
  bench,
  channels,
  coastDown,
  columns,
  derived,
  desktop,
  entry,
  handover,
  heat,
  history,
  importing,
  ladder,
  leaning,
  ledger,
  mixture,
  move,
  now,
  plan,
  ride,
  planSheets,
  setup,
  sheet,
  shell,
  start,
  tables,
  units,
  watch,
  whereFrom,
};
