import { explainGate, foretoldBy, type Gate } from '../../core/ladder/index.ts';
import type { Explanation, ShownKind } from '../../core/units/index.ts';
import table from '../components/Table.module.css';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import styles from './GateTable.module.css';

/** Counts, temperatures and shares are read at a glance: no decimals. */
const wholes: readonly ShownKind[] = ['number', 'temperature', 'share'];

export type GateTableProps = {
  readonly gates: readonly Gate[];
  readonly isDriven?: boolean;
  /** Of what foretells them. */
  readonly explanations?: readonly Explanation[];
};

/** Stop rules with their limits, how close the value is or should come, and what a closed one asks for. */
export function GateTable({ gates, isDriven = false, explanations = [] }: GateTableProps) {
  const { screens, show } = useWords();
  const said = screens.ladder;
  const level = (value: number, kind: ShownKind) =>
    show.quantity(value, kind, wholes.includes(kind) ? 0 : kind === 'lambda' ? 2 : undefined);
  const told = (gate: Gate): string => {
    const value = gate.measured ?? gate.predicted?.[gate.isLowest ? 0 : 1] ?? null;
    return value === null ? said.look : level(value, gate.kind);
  };
  const asked = (gate: Gate) => {
    const id = foretoldBy[gate.quantity];
    const foretold = gate.measured === null ? explanations.find((e) => e.id === id) : undefined;
    return foretold ? (
      <WhereFrom value={told(gate)} what={said.gates[gate.quantity]} explanation={foretold} />
    ) : (
      told(gate)
    );
  };
  const close = (gate: Gate) => {
    const explanation = explainGate(gate);
    if (explanation === null || gate.closeness === null || !Number.isFinite(gate.closeness)) return '–';
    const value = show.quantity(gate.closeness, 'share', 0);
    return <WhereFrom value={value} what={said.close} explanation={explanation} />;
  };
  return (
    <table className={table.table}>
      <thead>
        <tr>
          <th scope="col">{said.gate}</th>
          <th scope="col" className={table.number}>
            {said.limit}
          </th>
          <th scope="col" className={table.number}>
            {isDriven ? said.measured : said.expected}
          </th>
          <th scope="col" className={table.number}>
            {said.close}
          </th>
          <th scope="col">{said.ifClosed}</th>
        </tr>
      </thead>
      <tbody>
        {gates.map((gate) => (
          <tr key={gate.quantity}>
            <th scope="row">{said.gates[gate.quantity]}</th>
            <td className={table.number}>
              {gate.isLowest
                ? said.atLeast(level(gate.limit, gate.kind))
                : said.below(level(gate.limit, gate.kind))}
            </td>
            <td className={table.number}>{asked(gate)}</td>
            <td className={cx(table.number, styles[gate.state])}>
              {close(gate)}
              {(gate.state === 'near' || gate.state === 'closed') && `, ${said.states[gate.state]}`}
            </td>
            <td className={styles.action}>{said.actions[gate.ifClosed]}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
