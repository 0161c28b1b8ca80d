import { type KeyboardEvent, useId, useState } from 'react';
import {
  asRead,
  convert,
  offeredUnits,
  type ShownKind,
  type TypedValue,
  unitOf,
} from '../../core/units/index.ts';
import { readNumber } from '../../core/words/index.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './Field.module.css';
import { controlProps, FieldFrame } from './FieldFrame.tsx';
import { Select } from './Select.tsx';

export type QuantityFieldProps = {
  readonly label: string;
  readonly kind: ShownKind;
  /** A loss, a step or a pressure across a part: it counts from no zero, so its unit names none. */
  readonly isDifference?: boolean;
  readonly value: TypedValue | null;
  readonly onChange: (value: TypedValue | null) => void;
  /** What holds while the field is empty; shown, and marked as a default. */
  readonly fallback?: string | undefined;
  /** What stands in the field is the default, not something that was typed. */
  readonly isDefault?: boolean;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  /** Arrow keys move by this, in the field's unit. */
  readonly step?: number;
  /** Where the field is still empty; the reader's usual unit unless told. */
  readonly firstUnit?: string;
  readonly autoFocus?: boolean;
};

/** A number with its unit. It keeps what was typed, in the unit it was typed in. */
export function QuantityField(props: QuantityFieldProps) {
  const { label, kind, value, onChange, fallback, hint, error, step } = props;
  const { show, screens } = useWords();
  const [draft, setDraft] = useState<string | null>(null);
  const [unit, setUnit] = useState(value?.unit ?? props.firstUnit ?? show.units[kind]);
  const id = useId();
  // A gauge on a scale of its own shows lambda times that scale; lambda is what is kept.
  const scale = kind === 'lambda' ? show.units.gaugeScale : null;
  const current = scale === null ? (value?.unit ?? unit) : 'lambda';
  const usual = offeredUnits(kind);
  // A unit of a file that nobody would choose still has to be shown where a number stands in it.
  const offered = usual.some((u) => u.id === current) ? usual : [...usual, unitOf(current)];
  const symbolOf = (one: string) => (props.isDifference ? unitOf(one).symbol : show.symbol(one, kind));
  const symbol = scale === null ? symbolOf(current) : show.unit('lambda');
  const shown =
    value && scale !== null
      ? Number((convert(value.value, value.unit, 'lambda') * scale).toPrecision(4))
      : value && asRead(value.value, value.unit);
  const text = draft ?? (shown === null ? '' : plainNumber(shown, show.language));

  const typed = (next: string) => {
    setDraft(next);
    if (next.trim() === '') return onChange(null);
    const number = readNumber(next, show.language);
    if (number !== null) onChange({ value: number / (scale ?? 1), unit: current });
  };
  const nudge = (event: KeyboardEvent) => {
    const sign = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
    if (sign === 0 || step === undefined || !value) return;
    event.preventDefault();
    setDraft(null);
    // A tenth on a gauge's scale, as its own display steps.
    const by = scale === null ? step : (10 * step) / scale;
    const from = scale === null ? asRead(value.value, current) : convert(value.value, value.unit, current);
    onChange({ value: Number((from + sign * by).toPrecision(12)), unit: current });
  };
  const changeUnit = (next: string) => {
    setUnit(next);
    setDraft(null);
    // Only what is shown is rounded: another unit is the same quantity, and the old one again the same number.
    if (value) onChange({ value: Number(convert(value.value, current, next).toPrecision(12)), unit: next });
  };
  const isWrong = draft !== null && draft.trim() !== '' && readNumber(draft, show.language) === null;
  const fault = error ?? (isWrong ? screens.units.notANumber : undefined);
  const isByDefault = props.isDefault || (!value && fallback !== undefined);
  return (
    <FieldFrame
      id={id}
      label={
        <>
          {label}
          {isByDefault && <span className={styles.mark}>{screens.shell.byDefault}</span>}
        </>
      }
      hint={hint}
      error={fault}
    >
      <div className={styles.row}>
        <input
          {...controlProps({ id, hint, error: fault }, `${id}-unit`)}
          value={text}
          onChange={(event) => typed(event.target.value)}
          onBlur={() => setDraft(null)}
          onKeyDown={nudge}
          inputMode="decimal"
          autoComplete="off"
          // biome-ignore lint/a11y/noAutofocus: the first field of a dialog that was asked for
          autoFocus={props.autoFocus ?? false}
          placeholder={fallback ?? ''}
          className={styles.input}
        />
        {offered.length > 1 && scale === null ? (
          <Select
            label={screens.units.of(label)}
            isLabelHidden
            options={offered.map((u) => ({ id: u.id, label: symbolOf(u.id) || '1' }))}
            value={current}
            onChange={changeUnit}
          />
        ) : (
          symbol !== '' && <span className={styles.unit}>{symbol}</span>
        )}
        <span id={`${id}-unit`} hidden>
          {symbol}
        </span>
      </div>
    </FieldFrame>
  );
}

/** As typed: no grouping, no rounding, the language's decimal sign. */
function plainNumber(value: number, language: 'en' | 'de'): string {
  const text = String(value);
  return language === 'de' ? text.replace('.', ',') : text;
}
