import { type CoastDown, type RollWay, rollWays } from '../../core/contract/index.ts';
import { Segmented } from '../components/Segmented.tsx';
import table from '../components/Table.module.css';
import { useWords } from '../hooks/use-words.tsx';
import styles from './CoastDownFit.module.css';

export type RollTableProps = {
  readonly rolls: CoastDown['rolls'];
  readonly onWay: (at: number, way: RollWay) => void;
};

/** The rolls found in a log: when, how fast, and which way each went. */
export function RollTable({ rolls, onWay }: RollTableProps) {
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
        <tbody>
          {rolls.map((roll, at) => (
            <tr key={roll.from_s} data-way={roll.way}>
              <th scope="row">{at + 1}</th>
              <td>
                {said.from(
                  show.bare(roll.from_s - roll.countedOn_s, 'time', 1),
                  show.bare(roll.to_s - roll.countedOn_s, 'time', 1),
                )}
              </td>
              <td>{said.from(show.bare(roll.fromSpeed, 'speed', 0), show.bare(roll.toSpeed, 'speed', 0))}</td>
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
          ))}
        </tbody>
      </table>
    </div>
  );
}
