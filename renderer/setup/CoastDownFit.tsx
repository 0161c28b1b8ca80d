import type { RollWay } from '../../core/contract/index.ts';
import { type RunDirection, RunDirectionSchema, wayOfPull } from '../../core/session/index.ts';
import { Caution } from '../components/Caution.tsx';
import field from '../components/Field.module.css';
import { ProblemList } from '../components/ProblemList.tsx';
import { Select } from '../components/Select.tsx';
import { useWords } from '../hooks/use-words.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import styles from './CoastDownFit.module.css';
import { FittedLoad } from './FittedLoad.tsx';
import { RollTable } from './RollTable.tsx';
import { useCoastDown } from './use-coast-down.ts';

const directions = RunDirectionSchema.options;
const wayIn = (direction: RunDirection, n: number): RollWay =>
  wayOfPull(direction, n) === -1 ? 'back' : 'out';

/** The road load from the rolls in a log of the session, to be taken into the car. */
export function CoastDownFit({ sheet }: { sheet: Sheet }) {
  const { screens } = useWords();
  const said = screens.coastDown;
  const { runs, run, choose, setWays, answer, problems, isBusy } = useCoastDown();
  const ways = answer?.rolls.map((r) => r.way) ?? [];
  const direction = directions.find((d) => ways.every((way, n) => way === wayIn(d, n))) ?? null;
  return (
    <section className={styles.fit} aria-label={said.title} aria-busy={isBusy}>
      <h3 className={field.label}>{said.title}</h3>
      {run ? (
        <div className={styles.choices}>
          <Select
            label={said.run}
            options={runs.map(({ record, rolls }) => ({
              id: record.id,
              label: said.runOption(record.name, said.rollCount(rolls)),
            }))}
            value={run.record.id}
            onChange={choose}
          />
          {ways.length > 1 && (
            <Select<RunDirection>
              label={said.allWays}
              options={directions.map((id) => ({ id, label: screens.columns.ways[id] }))}
              value={direction}
              placeholder={said.eachItsOwn}
              onChange={(d) => setWays(ways.map((_, n) => wayIn(d, n)))}
            />
          )}
        </div>
      ) : (
        !problems && <HowToRoll isBusy={isBusy} />
      )}
      {problems && <ProblemList problems={problems} />}
      {run && answer && (
        <div className={styles.found}>
          <RollTable
            rolls={answer.rolls}
            onWay={(at, way) => setWays(ways.map((old, n) => (n === at ? way : old)))}
          />
          <FittedLoad answer={answer} run={run.record} sheet={sheet} isBusy={isBusy} />
        </div>
      )}
    </section>
  );
}

/** Nothing to fit yet: what to record. */
function HowToRoll({ isBusy }: { isBusy: boolean }) {
  const { screens } = useWords();
  const said = screens.coastDown;
  if (isBusy) return <p className={field.hint}>{screens.shell.loading}</p>;
  return (
    <div className={styles.how}>
      <p>{said.none}</p>
      <p className={field.hint}>{said.how}</p>
      <Caution>{said.caution}</Caution>
    </div>
  );
}
