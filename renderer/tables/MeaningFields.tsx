import {
  type CellMeaning,
  type TableAxes,
  type TableUnit,
  tableKinds,
  unitsOfTable,
} from '../../core/tables/index.ts';
import { unitOf } from '../../core/units/index.ts';
import field from '../components/Field.module.css';
import { Segmented } from '../components/Segmented.tsx';
import { Select } from '../components/Select.tsx';
import { TextField } from '../components/TextField.tsx';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './Tables.module.css';

export type MeaningFieldsProps = {
  /** Null where nobody can tell yet. */
  readonly meaning: CellMeaning | null;
  readonly axes: TableAxes;
  readonly name: string;
  readonly onMeaning: (meaning: CellMeaning) => void;
  readonly onAxes: (axes: TableAxes) => void;
  readonly onName: (name: string) => void;
};

const loads = [
  { kind: 'absolute', unit: 'kPa' },
  { kind: 'absolute', unit: 'bar' },
  { kind: 'absolute', unit: 'psi' },
  { kind: 'gauge', unit: 'kPa' },
  { kind: 'gauge', unit: 'bar' },
  { kind: 'gauge', unit: 'psi' },
  { kind: 'throttle', unit: '%' },
] as const;
const idOf = ({ kind, unit }: TableAxes['load']) => `${kind} ${unit}`;

/** What the numbers and the axes are; filled in with what they look like. */
export function MeaningFields({ meaning, axes, name, onMeaning, onAxes, onName }: MeaningFieldsProps) {
  const { screens } = useWords();
  const said = screens.tables;
  const units: readonly TableUnit[] = meaning ? unitsOfTable[meaning.kind] : [];
  const cells = units.flatMap((unit) =>
    meaning?.kind === 'boost'
      ? [false, true].map((isAbsolute) => ({
          id: `${unit} ${isAbsolute}`,
          label: `${unitOf(unit).symbol} ${isAbsolute ? said.absolute : said.gauge}`,
          unit,
          isAbsolute,
        }))
      : [{ id: `${unit} false`, label: unitOf(unit).symbol, unit, isAbsolute: false }],
  );
  return (
    <div className={cx(field.rows, styles.fields)}>
      <Select
        label={said.kind}
        placeholder={said.chooseKind}
        options={tableKinds.map((id) => ({ id, label: said.kinds[id] }))}
        value={meaning?.kind ?? null}
        onChange={(kind) => onMeaning({ kind, unit: unitsOfTable[kind][0], isAbsolute: false })}
      />
      <Select
        label={said.cells}
        options={cells}
        value={meaning ? `${meaning.unit} ${meaning.isAbsolute}` : null}
        isDisabled={cells.length < 2}
        onChange={(id) => {
          const found = cells.find((c) => c.id === id);
          if (meaning && found)
            onMeaning({ kind: meaning.kind, unit: found.unit, isAbsolute: found.isAbsolute });
        }}
      />
      <Segmented
        label={said.speedAxis}
        options={(['across', 'down'] as const).map((id) => ({ id, label: said.speedAxes[id] }))}
        value={axes.engineSpeed}
        onChange={(engineSpeed) => onAxes({ ...axes, engineSpeed })}
      />
      <Select
        label={said.loadAxis}
        options={loads.map((load) => ({ id: idOf(load), label: said.loads[load.kind](load.unit) }))}
        value={idOf(axes.load)}
        onChange={(id) => {
          const load = loads.find((l) => idOf(l) === id);
          if (load) onAxes({ ...axes, load });
        }}
      />
      <div className={styles.wide}>
        <TextField label={said.name} value={name} onChange={onName} maxLength={100} />
      </div>
    </div>
  );
}
