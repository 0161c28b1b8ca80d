import { explainReading } from '../../core/ladder/index.ts';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import styles from './GateList.module.css';
import { gateWords, measureOf, type ShownGate } from './gate-words.ts';

/** The stop rules with what was measured and how close that came; what no channel tells stands in one line. */
export function GateList({ gates, isDriven }: { gates: readonly ShownGate[]; isDriven: boolean }) {
  const { screens, show } = useWords();
  const said = screens.now;
  const seen = gates.filter((g) => g.measured !== null);
  const unseen = gates.filter((g) => g.measured === null).map((g) => gateWords(g, screens, show).name);
  if (gates.length === 0) return null;
  return (
    <section aria-label={said.gates}>
      <h3 className={styles.title}>{said.gates}</h3>
      <ul className={styles.list}>
        {seen.map((gate) => {
          const words = gateWords(gate, screens, show);
          return (
            <li key={gate.quantity} className={cx(styles.gate, styles[gate.state])}>
              <span className={styles.line}>
                <span>{words.name}</span>
                <span className={styles.value}>
                  <WhereFrom
                    value={words.measured}
                    what={words.name}
                    explanation={explainReading(gate) ?? undefined}
                  />
                  {gate.state !== 'open' && <strong> {said.gateStates[gate.state]}</strong>}
                </span>
              </span>
              <span className={styles.track} aria-hidden>
                <span style={{ width: `${measureOf(gate) * 100}%` }} />
              </span>
              <span className={styles.bound}>{words.bound}</span>
            </li>
          );
        })}
      </ul>
      {unseen.length > 0 && (
        <p className={styles.unseen}>{isDriven ? said.notLogged(unseen.join(', ')) : said.notDriven}</p>
      )}
    </section>
  );
}
