import { type Answer, type FitItem, fitRules, type Rule } from '../../core/fit/index.ts';
import { wordsOf } from '../../core/words/index.ts';
import { Segmented } from '../components/Segmented.tsx';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './FitReviewList.module.css';

export type FitRuleProps = {
  readonly item: FitItem;
  readonly answer: Answer | null;
  readonly onAnswer: (answer: Answer) => void;
};

/** One question about the fit: what it is about, why it matters, and what to do where the answer is no. */
export function FitRule({ item, answer, onAnswer }: FitRuleProps) {
  const { screens, show } = useWords();
  const said = screens.setup.fit;
  const rule = wordsOf(show.language).fitRules[item.id];
  const rules: readonly Rule[] = fitRules;
  const canBeAbsent = rules.find((r) => r.id === item.id)?.canBeAbsent !== false;
  const isOpen = item.state === 'fix' || item.state === 'unanswered';
  return (
    <li className={cx(styles.rule, isOpen && styles.open)}>
      <div className={styles.words}>
        <p className={styles.question}>{rule.question}</p>
        <p className={styles.reason}>{rule.reason}</p>
        {item.state === 'fix' && <p className={styles.remedy}>{rule.remedy}</p>}
        <p className={styles.state}>
          <strong className={styles[item.state]}>{said.states[item.state]}</strong>
          {item.decidedBy === 'setup' && `, ${said.fromSetup}`} · {said.hazards[item.hazard]}
        </p>
      </div>
      {item.decidedBy !== 'setup' && (
        <Segmented<Answer>
          label={rule.question}
          isLabelHidden
          options={[
            { id: 'yes', label: said.yes },
            { id: 'no', label: said.no },
            ...(canBeAbsent ? [{ id: 'not-here' as const, label: said.notHere }] : []),
          ]}
          value={answer}
          onChange={onAnswer}
        />
      )}
    </li>
  );
}
