import { useMemo } from 'react';
import type { Plan, Setup } from '../../core/injection/index.ts';
import { Chart } from '../chart/Chart.tsx';
import { useWords } from '../hooks/use-words.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import styles from './FeedChart.module.css';
import { FeedHandles } from './FeedHandles.tsx';
import { feedChart } from './feed-chart.ts';

export type FeedChartProps = { readonly plan: Plan; readonly setup: Setup; readonly sheet: Sheet };

/** Fluid over boost with the two points that are set. */
export function FeedChart({ plan, setup, sheet }: FeedChartProps) {
  const { screens, show } = useWords();
  const said = screens.plan;
  const spec = useMemo(() => feedChart(plan, setup, show), [plan, setup, show]);
  const share = (percent: number) => show.quantity(percent / 100, 'share', 0);
  const others = plan.strategies.filter((s) => s.name !== plan.driven.name);
  return (
    <section aria-label={said.chart}>
      <ul className={styles.legend}>
        <li className={styles.driven}>{said.strategies[plan.driven.name]}</li>
        {others.length > 0 && (
          <li className={styles.other}>{others.map((s) => said.strategies[s.name]).join(', ')}</li>
        )}
        <li className={styles.need}>
          {said.needLine}, {share(setup.targets.fluidRatio_percent)}
        </li>
        <li className={styles.window}>
          {said.window(share(setup.targets.ratioLow_percent), share(setup.targets.ratioHigh_percent))}
        </li>
      </ul>
      <div className={styles.chart}>
        <Chart
          spec={spec}
          overlay={(size) => <FeedHandles spec={spec} size={size} plan={plan} sheet={sheet} />}
        />
      </div>
    </section>
  );
}
