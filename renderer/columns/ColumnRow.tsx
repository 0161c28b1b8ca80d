import type { ComponentPropsWithRef } from 'react';
import type { ColumnSummary } from '../../core/contract/index.ts';
import { type ColumnMapping, type QuantityId, quantities } from '../../core/log/index.ts';
import { type Option, Select } from '../components/Select.tsx';
import table from '../components/Table.module.css';
import { useWords } from '../hooks/use-words.tsx';
import styles from './ColumnsDialog.module.css';
import { unitsFor, withMeaning, withQuantity } from './mapping-draft.ts';

export type ColumnRowProps = {
  readonly column: ColumnSummary;
  readonly meaning: ColumnMapping;
  readonly isCorrected: boolean;
  readonly preview: readonly number[];
  /** What a column may stand for, the same for all of them. */
  readonly offered: readonly Option<QuantityId | typeof nothing>[];
  readonly onChange: (meaning: ColumnMapping) => void;
} & Omit<ComponentPropsWithRef<'tr'>, 'onChange'>;

/** The column stands for no quantity; it is kept all the same. */
export const nothing = 'none';

/** One column: its name, what it stands for, in which unit, how sure that is and why. */
export function ColumnRow({
  column,
  meaning,
  isCorrected,
  preview,
  offered,
  onChange,
  ...rowProps
}: ColumnRowProps) {
  const { screens, show, note } = useWords();
  const said = screens.columns;
  const name = column.column;
  const kind = meaning.quantity && quantities[meaning.quantity];
  const itsUnits = unitsFor(meaning.quantity, meaning.unit);
  const byHand = isCorrected || column.reason?.code === 'log/column-by-hand';
  const why = byHand ? { code: 'log/column-by-hand' as const, facts: {} } : column.reason;
  return (
    <tr {...rowProps}>
      <th scope="row" className={styles.name}>
        {name}
      </th>
      <td className={styles.quantity}>
        <Select<QuantityId | typeof nothing>
          label={said.quantityOf(name)}
          isLabelHidden
          options={offered}
          value={meaning.quantity ?? nothing}
          onChange={(id) => onChange(withQuantity(meaning, id === nothing ? null : id))}
        />
      </td>
      <td className={styles.unit}>
        {itsUnits.length > 0 ? (
          <Select
            label={said.unitOf(name)}
            isLabelHidden
            options={itsUnits.map((id) => ({ id, label: show.symbol(id, 'number') || said.noUnit }))}
            value={meaning.unit}
            placeholder={said.noUnit}
            onChange={(unit) => onChange({ ...meaning, unit })}
          />
        ) : (
          meaning.unit || said.noUnit
        )}
      </td>
      <td className={table.number}>
        {withMeaning(column, meaning, preview)
          .map((v) => (kind === null || kind === 'number' ? show.reading(v) : show.bare(v, kind)))
          .join(' · ')}
        {kind && preview.length > 0 && ` ${show.unit(kind)}`}
      </td>
      <td className={table.number}>
        {meaning.quantity !== null && show.quantity(byHand ? 1 : column.confidence, 'share', 0)}
      </td>
      <td className={styles.why}>{why && note(why)}</td>
    </tr>
  );
}
