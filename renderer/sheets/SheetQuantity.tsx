import { useState } from 'react';
import { asRead, convert, type TypedValue } from '../../core/units/index.ts';
import type { Show } from '../../core/words/index.ts';
import { QuantityField } from '../components/QuantityField.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { useFieldProblem, useMissingListed } from './FieldProblems.tsx';
import type { FieldSpec } from './field-specs.ts';
import type { Sheet } from './use-sheet.ts';

export type SheetQuantityProps = {
  readonly spec: Extract<FieldSpec, { type: 'quantity' }>;
  readonly sheet: Sheet;
};

/** A number of the sheet in the reader's unit, kept in the session's own with the way it was typed beside it. */
export function SheetQuantity({ spec, sheet }: SheetQuantityProps) {
  const { screens, show } = useWords();
  const [isRefused, setRefused] = useState(false);
  const { path, kind, unit } = spec;
  const words = screens.sheet.fields[path];
  const problem = useFieldProblem(path);
  const isMissingListed = useMissingListed();
  const isImperial = show.units.length === 'ft';
  const own = spec.shownIn ? spec.shownIn[isImperial ? 'imperial' : 'metric'] : show.units[kind];
  const inOwn = (typed: TypedValue): TypedValue => ({
    value: convert(typed.value, typed.unit, own),
    unit: own,
  });
  const kept = sheet.typedAt(path, unit);
  // A number that nobody typed here stands in the session's unit: the reader gets their own.
  const value = kept && kept.unit === unit && unit !== own ? inOwn(kept) : kept;
  const fallback = spec.fallback && inOwn(spec.fallback);
  // What nobody has filled in yet is no fault.
  const missing = value === null ? problem : undefined;
  const toldHere = isMissingListed ? undefined : missing;
  const isDefault =
    spec.isAlwaysSet === true &&
    spec.fallback !== undefined &&
    value !== null &&
    Math.abs(convert(value.value, value.unit, unit) - spec.fallback.value) < 1e-9;
  return (
    <QuantityField
      label={words.label}
      kind={kind}
      isDifference={spec.isDifference ?? false}
      firstUnit={own}
      value={value}
      onChange={(typed) => {
        // A field that always holds something goes back to its default when it is emptied.
        const empty = spec.isAlwaysSet ? undefined : null;
        const taken = typed
          ? sheet.put(path, Number(convert(typed.value, typed.unit, unit).toPrecision(12)), typed)
          : sheet.put(path, empty);
        setRefused(!taken);
      }}
      hint={toldHere ?? (words.hint || undefined)}
      error={isRefused ? screens.sheet.outOfRange : missing ? undefined : problem}
      fallback={fallback && placeholder(asRead(fallback.value, fallback.unit), show)}
      isDefault={isDefault}
      {...(spec.step === undefined ? {} : { step: spec.step })}
    />
  );
}

function placeholder(value: number, show: Show): string {
  return show.number(value, String(value).split('.')[1]?.length ?? 0);
}
