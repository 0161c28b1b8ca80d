import { useMemo } from 'react';
import type { Snapshot } from '../../core/contract/index.ts';
import type { Entry } from '../../core/session/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { ProblemList } from '../components/ProblemList.tsx';
import { useCurves, useVerdict } from '../hooks/use-verdict.ts';
import { useWords } from '../hooks/use-words.tsx';
import { BenchTabs } from './BenchTabs.tsx';
import styles from './Comparison.module.css';
import { DriftReminder } from './DriftReminder.tsx';
import { decidePlan } from './decide-plan.ts';
import { Headline } from './Headline.tsx';
import { Overlay } from './Overlay.tsx';
import { secondLine } from './second-line.ts';
import { usePinned } from './use-pinned.ts';
import { verdictHeadline } from './verdict-headline.ts';

export type ComparisonProps = { readonly before: Entry; readonly after: Entry; readonly snapshot: Snapshot };

/** The bench proper: sentence, overlay, difference, and under it what the verdict rests on. */
export function Comparison({ before, after, snapshot }: ComparisonProps) {
  const words = useWords();
  const showView = useShow();
  const { screens, show } = words;
  const answer = useVerdict(before.id, after.id);
  const curves = useCurves([before.id, after.id]);
  const verdict = answer.value;
  const pinned = usePinned(snapshot);
  const { ledger } = snapshot.session;
  const [beforeAt, afterAt] = [ledger.indexOf(before), ledger.indexOf(after)];
  const labels = useMemo(
    () => ({
      before: `${beforeAt} · ${screens.ledger.before}`,
      after: `${afterAt} · ${screens.ledger.after}`,
    }),
    [beforeAt, afterAt, screens],
  );
  const pulls = useMemo(
    () =>
      (curves.value?.entries ?? []).flatMap((e) =>
        e.pulls.map((curve) => ({
          side: e.entryId === after.id ? ('after' as const) : ('before' as const),
          curve,
        })),
      ),
    [curves.value, after.id],
  );
  if (answer.problems) {
    return (
      <div className={styles.failed}>
        <h1>{screens.bench.failed}</h1>
        <ProblemList problems={answer.problems} />
        <Button onPress={answer.retry}>{screens.shell.tryAgain}</Button>
      </div>
    );
  }
  if (!verdict) return <p className={styles.busy}>{screens.bench.busy}</p>;
  return (
    <div className={styles.comparison} aria-busy={answer.isBusy}>
      <Headline
        parts={verdictHeadline(verdict, after, show)}
        second={secondLine(verdict, snapshot, after, words)}
        isStale={answer.isBusy}
        action={
          decidePlan(verdict) === 'settled' ? null : (
            <Button look="plain" onPress={() => showView({ dialog: { type: 'decide' } })}>
              {screens.bench.decide.open}
            </Button>
          )
        }
      />
      <DriftReminder verdict={verdict} before={before} after={after} snapshot={snapshot} />
      {verdict.curve && <Overlay curve={verdict.curve} labels={labels} pulls={pulls} pinned={pinned} />}
      <BenchTabs
        verdict={verdict}
        before={before}
        after={after}
        snapshot={snapshot}
        curves={pulls.map((p) => p.curve)}
      />
    </div>
  );
}
