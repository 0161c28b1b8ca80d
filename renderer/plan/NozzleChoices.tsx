import { Radio, RadioGroup } from 'react-aria-components';
import { explainNozzleChoice, type Plan } from '../../core/injection/index.ts';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import styles from './NozzleChoices.module.css';

/** As many as help to choose; the list is in order of fit. */
const most = 6;
const idOf = (names: readonly string[]) => [...names].sort().join(' + ');

/** Single nozzles and combinations of the own list, best first, with what each gives of the need. */
export function NozzleChoices({ plan, sheet }: { plan: Plan; sheet: Sheet }) {
  const { screens, show } = useWords();
  const said = screens.plan;
  const current = idOf(plan.nozzle.names);
  const first = plan.choices.slice(0, most);
  const shown = first.some((c) => idOf(c.names) === current)
    ? first
    : [...first.slice(0, most - 1), plan.nozzle];
  return (
    <RadioGroup
      aria-label={said.nozzle}
      value={current}
      onChange={(id) => {
        const chosen = shown.find((c) => idOf(c.names) === id);
        if (chosen) sheet.put('fluidSystem.fitted', chosen.names);
      }}
      className={cx(styles.list)}
    >
      {shown.map((choice) => {
        const id = idOf(choice.names);
        return (
          <div key={id} className={styles.row}>
            <Radio value={id} className={cx(styles.choice)}>
              <span className={styles.dot} />
              <span className={styles.words}>
                <span className={styles.name}>{choice.names.join(' + ')}</span>
                <span className={styles.fit}>
                  {said.fits[choice.fit]}, {show.quantity(choice.flow, 'volumeFlow')}
                </span>
              </span>
            </Radio>
            <WhereFrom
              value={said.feedOf(show.number(choice.feed, 2))}
              what={choice.names.join(' + ')}
              explanation={explainNozzleChoice(choice, plan.need.fluid)}
            />
          </div>
        );
      })}
    </RadioGroup>
  );
}
