import type { Plan, Setup } from '../../core/injection/index.ts';
import { Headline } from '../bench/Headline.tsx';
import { Segmented } from '../components/Segmented.tsx';
import { useWords } from '../hooks/use-words.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import { FeedChart } from './FeedChart.tsx';
import { FeedMapTable } from './FeedMapTable.tsx';
import styles from './PlanBody.module.css';
import { PlanMore } from './PlanMore.tsx';
import { planHeadline } from './plan-headline.ts';
import { StrategyTable } from './StrategyTable.tsx';

export type PlanBodyProps = { readonly plan: Plan; readonly setup: Setup; readonly sheet: Sheet };

export function PlanBody({ plan, setup, sheet }: PlanBodyProps) {
  const { screens, show, note } = useWords();
  const said = screens.plan;
  const [fit] = plan.nozzle.notes;
  const second = [fit && note(fit), note(plan.recommended.reason)].filter(Boolean).join(' ');
  const ways = plan.strategies.map((s) => ({
    id: s.name,
    label:
      s.name === plan.recommended.name
        ? `${said.strategies[s.name]}, ${said.recommended}`
        : said.strategies[s.name],
  }));
  return (
    <div className={styles.body}>
      <Headline parts={planHeadline(plan, said, show)} second={second} />
      <Segmented
        label={said.strategy}
        options={ways}
        value={plan.driven.name}
        onChange={(name) => sheet.put('targets.strategy', name)}
      />
      <FeedChart plan={plan} setup={setup} sheet={sheet} />
      <StrategyTable plan={plan} />
      <FeedMapTable
        map={plan.map}
        explanation={plan.explanations.find((e) => e.id === 'injection/feed-map')}
      />
      <PlanMore plan={plan} setup={setup} />
    </div>
  );
}
