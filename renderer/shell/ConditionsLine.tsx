import type { Session } from '../../core/session/index.ts';
import { celsius } from '../../core/units/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './ConditionsLine.module.css';

/** The session and its air, as the head of a page in a lab book. */
export function ConditionsLine({ session }: { session: Session }) {
  const { screens, show } = useWords();
  const { conditions, car } = session;
  const air = [
    conditions.ambient_C === null ? null : show.quantity(celsius(conditions.ambient_C), 'temperature'),
    conditions.barometer_kPa === null ? null : show.quantity(conditions.barometer_kPa * 1000, 'pressure'),
    car.correction === 'none' ? null : car.correction,
  ].filter((part) => part !== null);
  return (
    <p className={styles.line}>
      <span className={styles.name} title={session.name}>
        {session.name}
      </span>
      {session.isInvented && <span className={styles.mark}>{screens.shell.invented}</span>}
      {air.map((part) => (
        <span key={part} className={styles.air}>
          {part}
        </span>
      ))}
    </p>
  );
}
