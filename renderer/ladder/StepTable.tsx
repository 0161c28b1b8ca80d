import type { LadderStep, Range } from '../../core/ladder/index.ts';
import type { Explanation, ShownKind } from '../../core/units/index.ts';
import table from '../components/Table.module.css';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { AskedHead } from '../where-from/AskedHead.tsx';
import styles from './StepTable.module.css';
import { useStepTitle } from './use-step-title.ts';

export type StepTableProps = {
  readonly steps: readonly LadderStep[];
  readonly chosen: number | null;
  /** Of what all steps share. */
  readonly explanations: readonly Explanation[];
  readonly onChoose: (n: number) => void;
};

/** Every step to the target with what it should bring; the chosen one's gates stand below. */
export function StepTable({ steps, chosen, explanations, onChoose }: StepTableProps) {
  const { screens, show } = useWords();
  const titleOf = useStepTitle();
  const said = screens.ladder;
  const here = steps.find((s) => s.n === chosen) ?? steps[0];
  const head = (title: string, id: string) => (
    <AskedHead
      title={title}
      explanation={[...(here?.explanations ?? []), ...explanations].find((e) => e.id === id)}
    />
  );
  const range = (value: Range | null, kind: ShownKind, digits?: number) =>
    value
      ? said.between(show.bare(value[0], kind, digits), show.bare(value[1], kind, digits))
      : screens.shell.unknown;
  return (
    <table className={table.table}>
      <thead>
        <tr>
          <th scope="col">{said.n}</th>
          <th scope="col">{said.step}</th>
          <th scope="col" className={table.number}>
            {head(said.power(show.unit('power')), 'ladder/predicted-power')}
          </th>
          <th scope="col" className={table.number}>
            {head(said.room(show.unit('angle')), 'charge/knock-headroom')}
          </th>
          <th scope="col" className={table.number}>
            {head(said.duty, 'ladder/injector-duty')}
          </th>
          <th scope="col" className={table.number}>
            {head(said.intake(show.unit('temperature')), 'charge/evaporation')}
          </th>
        </tr>
      </thead>
      <tbody>
        {steps.map((step) => {
          const { power, knockHeadroom_rad: room, injectorDuty, intake } = step.predicted;
          return (
            <tr key={step.n} className={cx(styles.row, step.n === chosen && styles.here)}>
              <td className={styles.n}>{step.n}</td>
              <th scope="row">
                <button
                  type="button"
                  className={styles.choose}
                  aria-current={step.n === chosen ? 'step' : undefined}
                  onClick={() => onChoose(step.n)}
                >
                  {titleOf(step).title}
                </button>
                {step.isHalf && <span className={styles.half}>{said.half}</span>}
              </th>
              <td className={table.number}>{range(power, 'power', 0)}</td>
              <td
                className={cx(table.number, room && (room[1] < 0 ? styles.past : room[0] < 0 && styles.near))}
              >
                {range(room, 'angle', 1)}
              </td>
              <td className={table.number}>
                {injectorDuty === null ? screens.shell.unknown : show.quantity(injectorDuty, 'share', 0)}
              </td>
              <td className={table.number}>
                {Number.isFinite(intake) ? show.bare(intake, 'temperature', 0) : screens.shell.unknown}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
