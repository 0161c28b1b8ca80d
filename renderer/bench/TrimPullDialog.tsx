import { useState } from 'react';
import type { PullSummary } from '../../core/contract/index.ts';
import { type TypedValue, toSi } from '../../core/units/index.ts';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import field from '../components/Field.module.css';
import { QuantityField } from '../components/QuantityField.tsx';
import { TextField } from '../components/TextField.tsx';
import { isMuchTyped } from '../components/typed-since.ts';
import { cx } from '../design/cx.ts';
import { useOnce } from '../hooks/use-once.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { TrimCurve } from './TrimCurve.tsx';
import styles from './TrimPullDialog.module.css';
import { coarseStep_s } from './trim-steps.ts';

export type TrimPullDialogProps = {
  readonly runId: string;
  readonly pullId: string;
  readonly onClose: () => void;
};

/** Moves the ends of a pull, with the reason that stays beside it. */
export function TrimPullDialog({ runId, pullId, onClose }: TrimPullDialogProps) {
  const { snapshot } = useSession();
  const pull = snapshot?.runs.find((r) => r.record.id === runId)?.pulls.find((p) => p.id === pullId);
  return pull ? <OpenTrim pull={pull} onClose={onClose} /> : null;
}

const textOf = (value: TypedValue | null): string => `${value?.value ?? ''}`;

const seconds = (value: number): TypedValue => ({ value: Number(value.toFixed(3)), unit: 's' });

/** The fields show thousandths: what is rounded is not wider. */
const rounding_s = 0.001;

function OpenTrim({ pull, onClose }: { readonly pull: PullSummary; readonly onClose: () => void }) {
  const { screens } = useWords();
  const { edit } = useSession();
  const said = screens.bench;
  const [opened] = useState({
    from: seconds(pull.start_s - pull.countedOn_s),
    to: seconds(pull.end_s - pull.countedOn_s),
    reason: pull.trimmedBecause ?? '',
  });
  const [from, setFrom] = useState<TypedValue | null>(opened.from);
  const [to, setTo] = useState<TypedValue | null>(opened.to);
  const [reason, setReason] = useState(opened.reason);
  const isUnsaved = isMuchTyped(
    [textOf(opened.from), textOf(opened.to), opened.reason],
    [textOf(from), textOf(to), reason],
  );
  const from_s = from && toSi(from.value, from.unit) + pull.countedOn_s;
  const to_s = to && toSi(to.value, to.unit) + pull.countedOn_s;
  const isInOrder = from_s !== null && to_s !== null && from_s < to_s;
  // A window that leaves the pull would be another pull, which nothing has found.
  const isInside = isInOrder && from_s < pull.end_s && to_s > pull.start_s;
  const isStartWrong = from_s === null || from_s >= pull.end_s;
  const isEndWrong = to_s === null || to_s <= pull.start_s || (!isStartWrong && from_s >= to_s);
  const trim = useOnce(async () => {
    if (!isInside) return;
    const done = await edit({
      type: 'pull.edit',
      runId: pull.runId,
      edit: { at_s: (pull.start_s + pull.end_s) / 2, action: 'trim', from_s, to_s, reason: reason.trim() },
    });
    if (done) onClose();
  });
  return (
    <Dialog
      shape="roomy"
      title={said.trimTitle}
      onClose={onClose}
      isUnsaved={isUnsaved}
      actions={
        <>
          <Button look="main" onPress={trim} isDisabled={!isInside || reason.trim() === ''}>
            {said.trim}
          </Button>
          <CancelButton />
        </>
      }
    >
      <p>{said.trimWhy}</p>
      <TrimCurve
        pull={pull}
        ends={[from_s ?? pull.start_s, to_s ?? pull.end_s]}
        onMove={(end, at_s) => (end === 0 ? setFrom : setTo)(seconds(at_s - pull.countedOn_s))}
      />
      <div className={cx(styles.ends, field.rows)}>
        <QuantityField
          label={said.trimFrom}
          kind="time"
          value={from}
          onChange={setFrom}
          step={coarseStep_s}
          hint={isInside && from_s < pull.start_s - rounding_s ? said.trimWider : undefined}
          error={isStartWrong ? said.trimWrong : undefined}
          autoFocus
        />
        <QuantityField
          label={said.trimTo}
          kind="time"
          value={to}
          onChange={setTo}
          step={coarseStep_s}
          hint={isInside && to_s > pull.end_s + rounding_s ? said.trimWider : undefined}
          error={isEndWrong ? said.trimWrong : undefined}
        />
      </div>
      <TextField
        label={said.reason}
        hint={reason.trim() === '' ? said.reasonNeeded : undefined}
        value={reason}
        onChange={setReason}
        maxLength={2000}
      />
    </Dialog>
  );
}
