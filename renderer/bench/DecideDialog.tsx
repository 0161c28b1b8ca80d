import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { type Fact, FactList } from '../components/FactList.tsx';
import { FilePicker } from '../components/FilePicker.tsx';
import { emptyDraft } from '../entry/change-draft.ts';
import { useSelection } from '../hooks/use-selection.ts';
import { useVerdict } from '../hooks/use-verdict.ts';
import { useWords } from '../hooks/use-words.tsx';
import { useImportAll } from '../importing/use-imports.tsx';
import { type VerdictCard, verdictOrigin } from '../where-from/verdict-origin.ts';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import styles from './DecideDialog.module.css';
import { decidePlan } from './decide-plan.ts';

/** What would decide the two entries on the bench, in numbers, and the ways to get there. */
export function DecideDialog({ onClose }: { onClose: () => void }) {
  const { before, after } = useSelection();
  return before && after ? <Decide beforeId={before.id} afterId={after.id} onClose={onClose} /> : null;
}

type DecideProps = { readonly beforeId: string; readonly afterId: string; readonly onClose: () => void };

function Decide({ beforeId, afterId, onClose }: DecideProps) {
  const { screens, show, note } = useWords();
  const showView = useShow();
  const importAll = useImportAll();
  const answer = useVerdict(beforeId, afterId);
  const verdict = answer.value;
  const said = screens.bench.decide;
  if (!verdict) {
    // It opens at once, so that a key pressed while the two are still laid over each other is not lost.
    return (
      <Dialog
        title={said.open}
        onClose={onClose}
        shape="roomy"
        problems={answer.problems}
        actions={answer.problems && <Button onPress={answer.retry}>{screens.shell.tryAgain}</Button>}
      >
        <p aria-live="polite">{answer.problems ? screens.bench.failed : screens.bench.busy}</p>
      </Dialog>
    );
  }
  const plan = decidePlan(verdict);
  const { morePulls, smallestSeen, repeatability, margin, meanBefore } = verdict;
  const fact = (name: string, value: string | null, card: VerdictCard | null): Fact[] =>
    value === null
      ? []
      : [
          {
            name,
            value: card ? (
              <WhereFrom value={value} what={name} origin={verdictOrigin(card, verdict, show)} />
            ) : (
              value
            ),
          },
        ];
  const facts = [
    ...fact(said.more, morePulls === null ? null : said.pullsEach(morePulls), 'morePulls'),
    ...fact(
      said.smallest,
      smallestSeen === null ? null : show.quantity(smallestSeen, 'power'),
      'smallestSeen',
    ),
    ...fact(
      said.margin,
      meanBefore === null ? null : show.quantity(margin * meanBefore, 'power'),
      'equivalent',
    ),
    ...fact(said.scatter, repeatability && show.quantity(repeatability.deviation, 'power'), 'repeatability'),
  ];
  const into = (entryId: string) => (files: readonly File[]) => {
    onClose();
    void importAll(files.map((file) => ({ file, entryId })));
  };
  return (
    <Dialog
      title={said.titles[plan]}
      onClose={onClose}
      shape="roomy"
      actions={
        <>
          {plan !== 'settled' && (
            <>
              <FilePicker look="main" onFiles={into(afterId)}>
                {said.intoAfter}
              </FilePicker>
              <FilePicker onFiles={into(beforeId)}>{said.intoBefore}</FilePicker>
            </>
          )}
          <Button
            onPress={() =>
              showView({
                dialog: {
                  type: 'entry',
                  entryId: null,
                  draft: { ...emptyDraft, kind: 'nothing', against: beforeId },
                },
              })
            }
          >
            {said.again}
          </Button>
        </>
      }
    >
      <p>{said.why[plan]}</p>
      {verdict.kind === 'not-comparable' && (
        <ul className={styles.reasons}>
          {verdict.reasons.map((r) => (
            <li key={r.code}>{note(r)}</li>
          ))}
        </ul>
      )}
      {plan !== 'mend-first' && <FactList facts={facts} />}
      <p className={styles.small}>{said.drift}</p>
    </Dialog>
  );
}
