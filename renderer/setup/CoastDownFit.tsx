import type { CoastDown, RollWay } from '../../core/contract/index.ts';
import { Caution } from '../components/Caution.tsx';
import { Check } from '../components/Check.tsx';
import field from '../components/Field.module.css';
import { ProblemList } from '../components/ProblemList.tsx';
import { useWords } from '../hooks/use-words.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import styles from './CoastDownFit.module.css';
import { FittedLoad } from './FittedLoad.tsx';
import { RollTable } from './RollTable.tsx';
import { useCoastDown } from './use-coast-down.ts';
import { WaysOfAll } from './WaysOfAll.tsx';

/** What each run's rolls are said to do, from a list over all of them. */
function byRun(rolls: CoastDown['rolls'], ways: readonly RollWay[]): Record<string, RollWay[]> {
  const said: Record<string, RollWay[]> = {};
  rolls.forEach(({ runId, way }, n) => {
    said[runId] = [...(said[runId] ?? []), ways[n] ?? way];
  });
  return said;
}

/** The road load from the rolls in logs of the session, to be taken into the car. */
export function CoastDownFit({ sheet }: { sheet: Sheet }) {
  const { screens } = useWords();
  const said = screens.coastDown;
  const { runs, chosen, setChosen, setWays, answer, problems, isBusy } = useCoastDown();
  const rolls = answer?.rolls ?? [];
  const sayWays = (ways: readonly RollWay[]) => setWays(byRun(rolls, ways));
  return (
    <section className={styles.fit} aria-label={said.title} aria-busy={isBusy}>
      <h3 className={field.label}>{said.title}</h3>
      {runs.length > 0 ? (
        <div className={styles.choices}>
          <fieldset className={styles.logs}>
            <legend className={field.label}>{said.logs}</legend>
            {runs.map(({ record, rolls: count }) => (
              <Check
                key={record.id}
                label={said.runOption(record.name, said.rollCount(count))}
                isSelected={chosen.some((c) => c.record.id === record.id)}
                onChange={(isChosen) => setChosen(record.id, isChosen)}
              />
            ))}
          </fieldset>
          {rolls.length > 1 && <WaysOfAll ways={rolls.map((r) => r.way)} onWays={sayWays} />}
        </div>
      ) : (
        !problems && <HowToRoll isBusy={isBusy} />
      )}
      {problems && <ProblemList problems={problems} />}
      {runs.length > 0 && chosen.length === 0 && <p className={field.hint}>{said.noLog}</p>}
      {answer && (
        <div className={styles.found}>
          <RollTable
            rolls={rolls}
            runs={chosen.map((c) => c.record)}
            onWay={(at, way) => sayWays(rolls.map((r, n) => (n === at ? way : r.way)))}
          />
          <FittedLoad answer={answer} runs={chosen.map((c) => c.record)} sheet={sheet} isBusy={isBusy} />
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
