import { Trash2 } from 'lucide-react';
import { type DerivedChannel, type QuantityId, quantities, quantityIds } from '../../core/log/index.ts';
import { type Kind, kinds } from '../../core/units/index.ts';
import { Button } from '../components/Button.tsx';
import { ProblemList } from '../components/ProblemList.tsx';
import { Select } from '../components/Select.tsx';
import { TextField } from '../components/TextField.tsx';
import { useWords } from '../hooks/use-words.tsx';
import type { Check } from './check-derived.ts';
import styles from './DerivedDialog.module.css';

export type DerivedRowProps = {
  readonly derived: DerivedChannel;
  /** Null while nothing could be tried. */
  readonly check: Check | null;
  readonly onChange: (derived: DerivedChannel) => void;
  readonly onRemove: () => void;
};

/** One channel by formula, and what it comes to. */
export function DerivedRow({ derived, check, onChange, onRemove }: DerivedRowProps) {
  const { screens, show, quantity } = useWords();
  const said = screens.derived;
  const { kind } = derived;
  return (
    <li className={styles.row}>
      <div className={styles.fields}>
        <TextField
          label={said.name}
          value={derived.name}
          maxLength={100}
          onChange={(name) => onChange({ ...derived, name })}
        />
        <TextField
          label={said.formula}
          value={derived.formula}
          maxLength={500}
          onChange={(formula) => onChange({ ...derived, formula })}
        />
        <Select<Kind>
          label={said.kind}
          options={kinds.map((id) => ({ id, label: said.kinds[id] }))}
          value={kind}
          onChange={(next) => onChange({ ...derived, kind: next, quantity: null })}
        />
        <Select<QuantityId | 'none'>
          label={said.standsFor}
          options={[
            { id: 'none', label: said.standsForNothing },
            ...quantityIds
              .filter((id) => id !== 'time' && quantities[id] === kind)
              .map((id) => ({ id, label: quantity(id) })),
          ]}
          value={derived.quantity ?? 'none'}
          onChange={(next) => onChange({ ...derived, quantity: next === 'none' ? null : next })}
        />
        <Button look="icon" aria-label={said.remove(derived.name)} onPress={onRemove}>
          <Trash2 aria-hidden />
        </Button>
      </div>
      {derived.formula.trim() !== '' && check?.kind === 'wrong' && <ProblemList problems={check.problems} />}
      {check?.kind === 'works' && (
        <p className={styles.works} role="status">
          {kind === 'number'
            ? said.works(show.reading(check.low), show.reading(check.high))
            : said.works(show.bare(check.low, kind), show.quantity(check.high, kind))}
        </p>
      )}
      {check?.kind === 'no-value' && <p className={styles.works}>{said.noValue}</p>}
    </li>
  );
}
