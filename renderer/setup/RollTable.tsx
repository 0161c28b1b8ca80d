import { type CoastDown, type RollWay, rollWays } from '../../core/contract/index.ts';
import type { RunRecord } from '../../core/session/index.ts';
import { Segmented } from '../components/Segmented.tsx';
import table from '../components/Table.module.css';
import { useWords } from '../hooks/use-words.tsx';
import styles from './CoastDownFit.module.css';

export type RollTableProps = {
  readonly rolls: CoastDown['rolls'];
  /** The logs that they are from, in the order of the rolls. */
  readonly runs: readonly Pick<RunRecord, 'id' | 'name'>[];
  readonly onWay: (at: number, way: RollWay) => void;
};

/** The rolls found in the logs: when, how fast, and which way each went. */
export function RollTable({ rolls, runs, onWay }: RollTableProps) {
  const { screens, show } = useWords();
  const said = screens.coastDown;
  return (
    <div className={styles.rolls}>
      <table className={table.table}>
        <caption className="visually-hidden">{said.table}</caption>
        <thead>
          <tr>
            <th scope="col">{said.columns.roll}</th>
            <th scope="col">{`${said.columns.time}, ${show.unit('time')}`}</th>
            <th scope="col">{`${said.columns.speed}, ${show.unit('speed')}`}</th>
            <th scope="col">{said.columns.way}</th>
          </tr>
        </thead>
        {runs.map((run) => (
          <tbody key={run.id}>
            {runs.length > 1 && (
              <tr className={styles.log}>
                <th scope="rowgroup" colSpan={4}>
                  {run.name}
                </th>
              </tr>
            )}
            {rolls.map(
              (roll, at) =>
                roll.runId === run.id && (
                  <tr key={roll.from_s} data-way={roll.way}>
                    <th scope="row">{at + 1}</th>
                    <td>
                      {said.from(
                        show.bare(roll.from_s - roll.countedOn_s, 'time', 1),
                        show.bare(roll.to_s - roll.countedOn_s, 'time', 1),
                      )}
                    </td>
                    <td>
                      {said.from(show.bare(roll.fromSpeed, 'speed', 0), show.bare(roll.toSpeed, 'speed', 0))}
                    </td>
                    <td>
                      <Segmented<RollWay>
                        label={said.wayOf(at + 1)}
                        isLabelHidden
                        options={rollWays.map((id) => ({ id, label: said.ways[id] }))}
                        value={roll.way}
                        onChange={(way) => onWay(at, way)}
                      />
                    </td>
                  </tr>
                ),
            )}
          </tbody>
        ))}
      </table>
    </div>
  );
}
