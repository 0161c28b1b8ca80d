import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { gateLimit, gatesInSight, gateValue, type RideGate } from './gate-words.ts';
import styles from './RideGates.module.css';

/** How close the last pulls came to each limit: a word, a number, and what it is held against. */
export function RideGates({ gates }: { gates: readonly RideGate[] }) {
  const { screens, show } = useWords();
  const said = screens.ride;
  return (
    <dl className={styles.gates} aria-label={said.gates}>
      {gatesInSight(gates).map((gate) => (
        <div key={gate.quantity} className={cx(styles.gate, styles[gate.state])}>
          <dt className={styles.name}>
            {said.gate[gate.quantity]}
            <span className={styles.limit}>{gateLimit(gate, show, said)}</span>
          </dt>
          <dd className={styles.value}>
            {gateValue(gate, show, said)}
            {(gate.state === 'near' || gate.state === 'closed') && (
              <span className={styles.state}>{said.states[gate.state]}</span>
            )}
          </dd>
        </div>
      ))}
    </dl>
  );
}
