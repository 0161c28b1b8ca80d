import { useDeferredValue, useMemo } from 'react';
import { explainVerdict } from '../../core/compare/index.ts';
import type { Snapshot } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';
import { Chart } from '../chart/Chart.tsx';
import { Button } from '../components/Button.tsx';
import { ProblemList } from '../components/ProblemList.tsx';
import { useLedger } from '../hooks/use-ledger.ts';
import { useCurves } from '../hooks/use-verdict.ts';
import { useWords } from '../hooks/use-words.tsx';
import { originOfCard } from '../where-from/origin.ts';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import { BenchTabs } from './BenchTabs.tsx';
import styles from './Comparison.module.css';
import { Headline } from './Headline.tsx';
import overlay from './Overlay.module.css';
import { PinnedPulls } from './PinnedPulls.tsx';
import { pullsChart } from './pulls-chart.ts';
import { usePinned } from './use-pinned.ts';

/** One entry alone, the baseline as a rule: its level and every pull. */
export function SingleEntry({ entry, snapshot }: { entry: Entry; snapshot: Snapshot }) {
  const { screens, show } = useWords();
  const curves = useCurves([entry.id]);
  const ledger = useLedger();
  const said = screens.bench;
  const line = ledger.value?.lines.find((l) => l.entryId === entry.id);
  const pulls = useMemo(() => curves.value?.entries.flatMap((e) => e.pulls) ?? [], [curves.value]);
  const pinned = usePinned(snapshot);
  const band = curves.value?.entries[0]?.band ?? null;
  // Hundreds of curves take their time: the words and the table don't wait for them.
  const drawn = useDeferredValue(useMemo(() => ({ pulls, pinned, band }), [pulls, pinned, band]));
  const spec = useMemo(
    () =>
      pullsChart(
        drawn.pulls,
        show,
        drawn.pinned.map((p) => p.curve),
        drawn.band,
      ),
    [drawn, show],
  );
  if (curves.problems) {
    return (
      <div className={styles.failed}>
        <h1>{said.failed}</h1>
        <ProblemList problems={curves.problems} />
        <Button onPress={curves.retry}>{screens.shell.tryAgain}</Button>
      </div>
    );
  }
  if (!curves.value || !line) return <p className={styles.busy}>{screens.shell.loading}</p>;
  const level = line.level
    ? line.level.half === null
      ? show.quantity(line.level.mean, 'power')
      : show.withHalf(line.level.mean, line.level.half, 'power')
    : null;
  return (
    <div className={styles.comparison}>
      <Headline
        parts={[{ text: level ? said.baselineTitle(level) : said.baselineNoPulls }]}
        action={
          level ? (
            <WhereFrom
              value={screens.whereFrom.ask}
              what={level}
              origin={originOfCard(explainVerdict.level, show)}
            />
          ) : undefined
        }
        second={level ? said.single(screens.ledger.pulls(line.pulls)) : said.baselineNoPullsWhy}
      />
      {pulls.length > 0 ? (
        <div className={overlay.overlay}>
          <div className={overlay.chart}>{drawn.pulls.length > 0 && <Chart spec={spec} />}</div>
          <PinnedPulls pinned={pinned} at={null} />
        </div>
      ) : (
        <PinnedPulls pinned={pinned} at={null} />
      )}
      <BenchTabs verdict={null} before={null} after={entry} snapshot={snapshot} curves={pulls} />
    </div>
  );
}
