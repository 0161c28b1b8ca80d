import {
  openChangeOf,
  type SessionTable,
  SessionTableSchema,
  type TableChange,
} from '../../core/session/index.ts';
import { air } from './day.ts';
import { story } from './story.ts';
import { lambdaTargetAt, sparkAt, type Tune } from './tune.ts';

/** Axes of the invented engine control. */
const speeds_rpm = [
  800, 1200, 1600, 2000, 2400, 2800, 3200, 3600, 4000, 4400, 4800, 5200, 5600, 6000, 6400, 6800,
];
const loads_kPa = [30, 45, 60, 75, 90, 100, 115, 130, 145, 160, 175, 190, 205, 220, 235, 250];

/** As an engine control's own editor hands a table over: a title, then axes and cells between tabs. */
function tableText(title: string, digits: number, cell: (rpm: number, kPa: number) => number): string {
  const lines = [
    title,
    ['kPa\\rpm', ...speeds_rpm].join('\t'),
    ...loads_kPa.map((kPa) => [kPa, ...speeds_rpm.map((rpm) => cell(rpm, kPa).toFixed(digits))].join('\t')),
  ];
  return `${lines.join('\r\n')}\r\n`;
}

/** Whole half degrees, as such a table is written. */
const half = (value: number) => Math.round(value * 2) / 2;

const sparkText = (tune: Tune) =>
  tableText('Spark advance (deg), invented', 1, (rpm, kPa) =>
    half(sparkAt(tune, rpm, kPa * 1e3 - air.pressure)),
  );
const lambdaText = (tune: Tune) =>
  tableText('Lambda target, invented', 3, (_rpm, kPa) => lambdaTargetAt(tune, kPa * 1e3));

const tuneOf = (id: string): Tune => {
  const chapter = story.find((c) => c.id === id);
  if (!chapter) throw new Error(`the story has no ${id}`);
  return chapter.declaredTune;
};

const axes = { engineSpeed: 'across', load: { kind: 'absolute', unit: 'kPa' } } as const;

/** The tables as they stand at the end of the invented day. */
export function controlTables(readAt: string): readonly SessionTable[] {
  const before = sparkText(tuneOf('mixture'));
  const after = sparkText(tuneOf('spark-again'));
  const mixture = lambdaText(tuneOf('mixture'));
  return [
    SessionTableSchema.parse({
      id: 'spark',
      name: 'Spark',
      kind: 'spark',
      unit: 'deg',
      axes,
      readAt,
      asRead: before,
      recorded: after,
      now: after,
      limit: 24,
    }),
    SessionTableSchema.parse({
      id: 'lambda',
      name: 'Lambda target',
      kind: 'lambda',
      unit: 'lambda',
      axes,
      readAt,
      asRead: mixture,
      recorded: mixture,
      now: mixture,
    }),
  ];
}

/** What the last spark step did to the table, cell by cell. */
export function lastSparkChange(readAt: string): TableChange {
  const spark = controlTables(readAt)[0];
  const change = spark && openChangeOf({ ...spark, recorded: spark.asRead });
  if (!change) throw new Error('the last spark step changed no cell');
  return change;
}
