import { Pin } from 'lucide-react';
import { type ComponentPropsWithRef, memo } from 'react';
import type { PullCurve, PullSummary } from '../../core/contract/index.ts';
import { rpm } from '../../core/units/index.ts';
import { useShow, useView } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import table from '../components/Table.module.css';
import { Toggle } from '../components/Toggle.tsx';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './PullsTable.module.css';
import { handRemarks } from './pull-remarks.ts';
import { withToggled } from './toggled.ts';

/** With what its row takes besides, each by itself: the same again is not drawn again. */
export type PullRowProps = ComponentPropsWithRef<'tr'> & {
  readonly pull: PullSummary;
  /** Place of its entry in the ledger, from 0. */
  readonly entryNumber: number;
  /** In its entry, from 1. */
  readonly number: number;
  readonly runName: string;
  /** 1 out, -1 back, null not said. */
  readonly way: 1 | -1 | null;
  readonly curve: PullCurve | null;
};

export const PullRow = memo(function PullRow(props: PullRowProps) {
  const { pull, entryNumber, number, runName, way, curve, ...rowProps } = props;
  const { screens, show, note } = useWords();
  const view = useView();
  const showView = useShow();
  const { pinnedPulls } = view;
  const said = screens.bench;
  const powers = curve?.wheelPower.filter((v) => v !== null) ?? [];
  const told = [...handRemarks(pull, said), ...pull.flags.map(note)].filter((t) => t !== '');
  // Of a pull that only its trim speaks of, nobody would see that it is out.
  const isOutUnsaid = !pull.counts && pull.droppedBecause === null && pull.flags.length === 0;
  const remarks = isOutUnsaid ? [...told, said.notCounted] : told;
  const driven = way === null ? '' : way === 1 ? said.way.out : said.way.back;
  // That a pull counts is the rule: a reader of the screen hears it, the eye needs only the exceptions.
  const shown = remarks.join(' ');
  const joined = (text: string) => (driven === '' ? text : `, ${text}`);
  return (
    <tr {...rowProps} className={cx(!pull.counts && styles.out)}>
      <th scope="row" className={styles.pull}>
        <Toggle
          className={styles.pin}
          aria-label={screens.channels.pin(`${entryNumber} · ${said.pullNumber(number)}`)}
          isOn={pinnedPulls.includes(pull.id)}
          onToggle={() => showView((now) => ({ pinnedPulls: withToggled(now.pinnedPulls, pull.id) }))}
        >
          <Pin aria-hidden />
        </Toggle>
        {said.pullNumber(number)}
        <span className={styles.run} title={runName}>
          {runName}
        </span>
        <span className={cx(styles.remark, shown === '' && driven === '' && 'visually-hidden')}>
          {driven}
          {shown !== '' ? joined(shown) : <span className="visually-hidden">{joined(said.counted)}</span>}
        </span>
      </th>
      <td className={table.number}>{show.bare(pull.start_s - pull.countedOn_s, 'time', 1)}</td>
      <td className={table.number}>
        {pull.rpmFrom !== null &&
          pull.rpmTo !== null &&
          `${show.bare(rpm(pull.rpmFrom), 'engineSpeed')}–${show.bare(rpm(pull.rpmTo), 'engineSpeed')}`}
      </td>
      <td className={table.number}>{powers.length > 0 && show.bare(Math.max(...powers), 'power')}</td>
      <td className={styles.action}>
        <Button
          look="plain"
          aria-label={said.trimOf(number)}
          onPress={() => showView({ dialog: { type: 'trim-pull', runId: pull.runId, pullId: pull.id } })}
        >
          {said.trim}
        </Button>
        {/* One button for both: it keeps the focus when the pull goes out or comes back. */}
        <Button
          look="plain"
          onPress={() =>
            showView({
              dialog: {
                type: pull.counts ? 'drop-pull' : 'restore-pull',
                runId: pull.runId,
                pullId: pull.id,
              },
            })
          }
        >
          {pull.counts ? said.drop : pull.droppedBecause === null ? said.countAnyway : said.restore}
        </Button>
      </td>
    </tr>
  );
});
