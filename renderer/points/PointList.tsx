import { Plus, X } from 'lucide-react';
import { useState } from 'react';
import { convert } from '../../core/units/index.ts';
import { Button } from '../components/Button.tsx';
import field from '../components/Field.module.css';
import { useWords } from '../hooks/use-words.tsx';
import { FieldFault } from '../sheets/FieldProblems.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import { PointCell } from './PointCell.tsx';
import styles from './PointList.module.css';
import { type PointColumn, type PointRow, sameRows, wholeRows, withCell, withPasted } from './point-rows.ts';

export type PointListProps = {
  readonly label: string;
  readonly hint?: string;
  /** Where the points are kept, and what is kept now. */
  readonly path: string;
  readonly rows: readonly PointRow[];
  readonly columns: readonly PointColumn[];
  readonly sheet: Pick<Sheet, 'put'>;
};

/**
 * A list of points as a small table, typed or pasted from a spreadsheet. A point that is not whole yet waits here;
 * the whole ones are kept as they are typed.
 */
export function PointList({ label, hint, path, rows, columns, sheet }: PointListProps) {
  const { screens, show } = useWords();
  const said = screens.setup.points;
  const [draft, setDraft] = useState<{ rows: readonly PointRow[]; isRefused: boolean } | null>(null);
  // Undo, or a list that came from elsewhere, is newer than what waits here.
  const isCurrent = draft && (draft.isRefused || sameRows(wholeRows(draft.rows, columns), rows, columns));
  const shown = isCurrent ? draft.rows : rows;
  const units = columns.map((c) => c.shownIn ?? show.units[c.kind]);
  const set = (next: readonly PointRow[], part: string) => {
    const isTaken = sheet.put(path, wholeRows(next, columns), null, `${path}.${part}`);
    setDraft({ rows: next, isRefused: !isTaken });
  };
  const empty = Object.fromEntries(columns.map((c) => [c.key, null]));
  return (
    <section className={styles.list} aria-label={label}>
      <h3 className={field.label}>{label}</h3>
      {hint && <p className={field.hint}>{hint}</p>}
      {shown.length > 0 && (
        <table className={styles.table}>
          <thead>
            <tr>
              {columns.map((c, k) => {
                const symbol = show.symbol(units[k] ?? c.unit, c.kind);
                return (
                  <th key={c.key} scope="col">
                    {symbol === '' ? c.label : `${c.label}, ${symbol}`}
                  </th>
                );
              })}
              <th scope="col">
                <span className="visually-hidden">{said.remove}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {shown.map((row, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a point has no name, its place is all it is known by
              <tr key={i}>
                {columns.map((c, k) => {
                  const value = row[c.key];
                  const unit = units[k] ?? c.unit;
                  return (
                    <td key={c.key}>
                      <PointCell
                        label={said.cell(c.label, i + 1)}
                        value={typeof value === 'number' ? convert(value, c.unit, unit) : null}
                        unit={unit}
                        onChange={(v) =>
                          set(
                            withCell(
                              shown,
                              i,
                              c.key,
                              v === null ? null : Number(convert(v, unit, c.unit).toPrecision(12)),
                            ),
                            `${i}.${c.key}`,
                          )
                        }
                        onPasteCells={(text) => {
                          const from = { row: i, column: k };
                          const next = withPasted(shown, text, from, columns, units, show.language);
                          if (next) set(next, 'pasted');
                          return next !== null;
                        }}
                      />
                    </td>
                  );
                })}
                <td>
                  <Button
                    look="plain"
                    aria-label={said.removePoint(i + 1)}
                    onPress={() =>
                      set(
                        shown.filter((_, at) => at !== i),
                        `removed ${shown.length}`,
                      )
                    }
                  >
                    <X aria-hidden />
                  </Button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {isCurrent && draft.isRefused && <p className={field.error}>{screens.sheet.outOfRange}</p>}
      <FieldFault path={path} />
      <Button
        look="plain"
        onPress={() => setDraft({ rows: [...shown, empty], isRefused: isCurrent ? draft.isRefused : false })}
      >
        <Plus aria-hidden />
        {said.add}
      </Button>
    </section>
  );
}
