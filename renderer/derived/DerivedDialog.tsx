import { useMemo, useState } from 'react';
import type { Snapshot } from '../../core/contract/index.ts';
import { type DerivedChannel, type QuantityId, quantityIds } from '../../core/log/index.ts';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { checkDerived, isFormulaWrong, isOther } from './check-derived.ts';
import styles from './DerivedDialog.module.css';
import { DerivedRow } from './DerivedRow.tsx';
import { examples } from './examples.ts';
import { followed, inputsOf, namedColumns } from './named-inputs.ts';
import { useRowFocus } from './use-row-focus.ts';
import { useFormulaParser, useTrialLog } from './use-trial-log.ts';

/** The session's channels by formula. */
export function DerivedDialog({ onClose }: { onClose: () => void }) {
  const { snapshot } = useSession();
  return snapshot ? <OpenDerived snapshot={snapshot} onClose={onClose} /> : null;
}

/** A row keeps its place on the screen while its name is typed. */
type Row = { readonly id: number; readonly derived: DerivedChannel };

function OpenDerived({ snapshot, onClose }: { snapshot: Snapshot; onClose: () => void }) {
  const { screens, quantity } = useWords();
  const { edit } = useSession();
  const said = screens.derived;
  const [rows, setRows] = useState<readonly Row[]>(() =>
    snapshot.session.derivedChannels.map((derived, id) => ({ id, derived })),
  );
  const { log, name } = useTrialLog(snapshot);
  const parser = useFormulaParser();
  const all = useMemo(() => rows.map((r) => r.derived), [rows]);
  const checks = useMemo(() => (log && parser ? checkDerived(log, all, parser) : null), [log, parser, all]);
  const { list, onGoing } = useRowFocus(rows.length);
  const add = (derived: Pick<DerivedChannel, 'name' | 'formula' | 'kind'>) =>
    setRows((old) => [
      ...old,
      {
        id: Math.max(-1, ...old.map((r) => r.id)) + 1,
        derived: { ...derived, quantity: null, inputs: [] },
      },
    ]);
  const change = (id: number, next: DerivedChannel) =>
    setRows((old) => {
      const at = old.findIndex((r) => r.id === id);
      const before = old[at]?.derived ?? next;
      const named = namedColumns(
        log ?? { channels: [] },
        old.slice(0, at).map((r) => r.derived),
      );
      const inputs = inputsOf(next.formula, next.inputs, named);
      return old.map((r) => {
        if (r.id === id) return { id, derived: { ...next, inputs } };
        return { ...r, derived: followed(r.derived, before, next) };
      });
    });
  const names = all.map((d) => d.name.trim());
  const isNamed =
    names.every((n) => n !== '') &&
    new Set(names).size === names.length &&
    all.every((d) => d.formula.trim() !== '');
  const isWrong = checks?.some(isFormulaWrong) ?? false;
  const save = async () => {
    if (await edit({ type: 'derivedChannels.set', derivedChannels: [...all] })) onClose();
  };
  const own = useMemo(() => (log ? namedColumns(log, all) : []), [log, all]);
  const nameable = [...new Set((log?.channels ?? []).flatMap((c) => c.quantity ?? []))];
  return (
    <Dialog
      title={said.title}
      onClose={onClose}
      isUnsaved={isOther(snapshot.session.derivedChannels, all)}
      shape="wide"
      actions={
        <>
          <Button look="main" onPress={save} isDisabled={!isNamed || isWrong}>
            {said.save}
          </Button>
          <CancelButton />
          {!isNamed && <p className={styles.missing}>{said.namesMissing}</p>}
        </>
      }
    >
      <p>{said.intro}</p>
      {rows.length === 0 && <p className={styles.soft}>{said.empty}</p>}
      <ul ref={list} className={styles.rows}>
        {rows.map(({ id, derived }, i) => (
          <DerivedRow
            key={id}
            derived={derived}
            check={checks?.[i] ?? null}
            onChange={(next) => change(id, next)}
            onRemove={() => {
              onGoing(i);
              setRows((old) => old.filter((r) => r.id !== id));
            }}
          />
        ))}
      </ul>
      <div className={styles.more}>
        <Button onPress={() => add({ name: '', formula: '', kind: 'number' })}>{said.add}</Button>
      </div>
      <div className={styles.examples}>
        <span className={styles.soft}>{said.examples}</span>
        <div className={styles.named}>
          {examples.map(({ id, formula, kind }) => (
            <Button
              key={id}
              look="plain"
              isDisabled={names.includes(said.exampleNames[id])}
              onPress={() => add({ name: said.exampleNames[id], formula, kind })}
            >
              {said.exampleNames[id]}
            </Button>
          ))}
        </div>
      </div>
      <p className={styles.soft}>{name === null ? said.notChecked : said.checkedOn(name)}</p>
      {nameable.length + own.length > 0 && (
        <details className={styles.names}>
          <summary>{said.canName}</summary>
          <ul>
            {quantityIds
              .filter((id): id is QuantityId => nameable.includes(id))
              .map((id) => (
                <li key={id}>
                  <code>{id}</code> {quantity(id)}
                </li>
              ))}
            {own.map(({ symbol, column }) => (
              <li key={`column ${column}`}>
                <code>{symbol}</code> {column}
              </li>
            ))}
          </ul>
        </details>
      )}
    </Dialog>
  );
}
