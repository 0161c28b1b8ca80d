import { Download } from 'lucide-react';
import { guardCsv, type Plan } from '../../core/injection/index.ts';
import { Button } from '../components/Button.tsx';
import { FactList } from '../components/FactList.tsx';
import { saveFile } from '../handover/save-file.ts';
import { useWords } from '../hooks/use-words.tsx';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import { GuardTable } from './GuardTable.tsx';
import styles from './PlanMore.module.css';

/** Under the curve: how far the tank reaches, what is still normal, what to fall back to, and the remarks. */
export function PlanMore({ plan }: { plan: Plan }) {
  const { screens, show, note } = useWords();
  const said = screens.plan;
  const { endurance } = plan;
  const optional = (value: number | null) => (value === null ? screens.shell.unknown : show.number(value, 0));
  return (
    <div className={styles.more}>
      <section>
        <h2>{said.endurance}</h2>
        <FactList
          facts={[
            {
              name: said.perPull,
              value: (
                <WhereFrom
                  value={show.quantity(endurance.perPull, 'volume', 3)}
                  what={said.perPull}
                  explanation={endurance.explanation}
                />
              ),
            },
            { name: said.pullsPerTank, value: optional(endurance.pullsPerTank) },
            { name: said.reserve, value: optional(endurance.pullsInReserve) },
          ]}
        />
      </section>
      <section>
        <h2>{said.fallback}</h2>
        {plan.fallback.notes.map((n) => (
          <p key={n.code}>{note(n)}</p>
        ))}
      </section>
      <section className={styles.wide}>
        <div className={styles.head}>
          <h2>{said.guard}</h2>
          <Button
            look="plain"
            onPress={() => saveFile('guard-band.csv', guardCsv(plan.guardBand), 'text/csv')}
          >
            <Download aria-hidden />
            {said.guardSave}
          </Button>
        </div>
        <p className={styles.soft}>{said.guardWhy}</p>
        <GuardTable rows={plan.guardBand} />
      </section>
      <section className={styles.wide}>
        <h2>{said.remarks}</h2>
        <ul className={styles.remarks}>
          {[...plan.driven.notes, ...plan.notes, ...endurance.notes].map((n) => {
            const text = note(n);
            return <li key={text}>{text}</li>;
          })}
        </ul>
      </section>
      <section className={styles.wide}>
        <h2>{said.loss}</h2>
        <ul className={styles.remarks}>
          {plan.powerLossGuide.map((n) => (
            <li key={n.code}>{note(n)}</li>
          ))}
        </ul>
      </section>
    </div>
  );
}
