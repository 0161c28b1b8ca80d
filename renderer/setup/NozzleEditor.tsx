import { Plus } from 'lucide-react';
import { type Place, places, type Setup } from '../../core/session/index.ts';
import { convert } from '../../core/units/index.ts';
import { Button } from '../components/Button.tsx';
import { Check } from '../components/Check.tsx';
import { QuantityField } from '../components/QuantityField.tsx';
import { Select } from '../components/Select.tsx';
import { TextField } from '../components/TextField.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { FieldFault } from '../sheets/FieldProblems.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import styles from './RowEditor.module.css';

type Nozzle = Setup['fluidSystem']['nozzles'][number];

const fresh = (n: number): Nozzle => ({
  name: `N${n}`,
  flow_mL_min: 200,
  ratedPressure_kPa: 700,
  ratedDensity_kg_m3: 998.2,
  count: null,
  place: null,
});

/** The nozzles that are at hand, with their rating, and which of them are fitted. */
export function NozzleEditor({ sheet }: { sheet: Sheet }) {
  const { screens, show } = useWords();
  const said = screens.setup.nozzle;
  const placeNames = screens.sheet.options['fluidSystem.place'];
  const { nozzles, fitted } = sheet.doc.fluidSystem;
  const setAll = (next: readonly Nozzle[], nextFitted: readonly string[], part: string) =>
    sheet.put(
      'fluidSystem',
      { ...sheet.doc.fluidSystem, nozzles: next, fitted: nextFitted },
      null,
      `fluidSystem.nozzles.${part}`,
    );
  const change = (i: number, patch: Partial<Nozzle>) =>
    setAll(
      nozzles.map((n, at) => (at === i ? { ...n, ...patch } : n)),
      // A nozzle that is renamed stays fitted under its new name.
      patch.name === undefined ? fitted : fitted.map((f) => (f === nozzles[i]?.name ? (patch.name ?? f) : f)),
      `${i}.${Object.keys(patch)[0]}`,
    );
  const remove = (i: number) =>
    setAll(
      nozzles.filter((_, at) => at !== i),
      fitted.filter((f) => f !== nozzles[i]?.name),
      `removed ${nozzles.length}`,
    );
  const setFitted = (name: string, isFitted: boolean) =>
    sheet.put('fluidSystem.fitted', isFitted ? [...fitted, name] : fitted.filter((f) => f !== name));
  const flowUnit = show.units.volumeFlow;
  const pressureUnit = show.units.fluidPressure;
  const stored = (value: number, from: string, to: string) =>
    Number(convert(value, from, to).toPrecision(12));
  return (
    <div className={styles.editor}>
      {nozzles.length === 0 && <p>{said.none}</p>}
      <FieldFault path="fluidSystem.nozzles" />
      {nozzles.map((nozzle, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the name is being typed; its place is all that stays
        <div key={i} className={styles.nozzle}>
          <TextField
            label={said.name}
            value={nozzle.name}
            onChange={(name) => {
              if (name.trim() !== '') change(i, { name });
            }}
          />
          <QuantityField
            label={said.flow}
            kind="volumeFlow"
            value={{ value: convert(nozzle.flow_mL_min, 'mL/min', flowUnit), unit: flowUnit }}
            onChange={(v) => v && change(i, { flow_mL_min: stored(v.value, v.unit, 'mL/min') })}
            step={10}
          />
          <QuantityField
            label={said.at}
            kind="fluidPressure"
            isDifference
            value={{ value: convert(nozzle.ratedPressure_kPa, 'kPa', pressureUnit), unit: pressureUnit }}
            onChange={(v) =>
              v && v.value > 0 && change(i, { ratedPressure_kPa: stored(v.value, v.unit, 'kPa') })
            }
            step={0.5}
          />
          <QuantityField
            label={said.count}
            kind="number"
            value={nozzle.count === null ? null : { value: nozzle.count, unit: '' }}
            fallback={said.anyNumber}
            onChange={(v) => change(i, { count: v === null ? null : Math.round(v.value) })}
            step={1}
          />
          <Select<Place | 'others'>
            label={said.place}
            options={[
              { id: 'others', label: said.likeOthers },
              ...places.map((id) => ({ id, label: placeNames[id] })),
            ]}
            value={nozzle.place ?? 'others'}
            onChange={(id) => change(i, { place: id === 'others' ? null : id })}
          />
          <QuantityField
            label={said.density}
            kind="density"
            value={{
              value: convert(nozzle.ratedDensity_kg_m3, 'kg/m3', show.units.density),
              unit: show.units.density,
            }}
            isDefault={nozzle.ratedDensity_kg_m3 === 998.2}
            onChange={(v) => change(i, { ratedDensity_kg_m3: v ? stored(v.value, v.unit, 'kg/m3') : 998.2 })}
            step={0.001}
          />
          <Check
            label={said.fitted}
            isSelected={fitted.includes(nozzle.name)}
            onChange={(isFitted) => setFitted(nozzle.name, isFitted)}
          />
          <Button look="plain" onPress={() => remove(i)}>
            {said.remove}
          </Button>
        </div>
      ))}
      <Button
        look="plain"
        onPress={() => setAll([...nozzles, fresh(nozzles.length + 1)], fitted, `added ${nozzles.length}`)}
      >
        <Plus aria-hidden />
        {said.add}
      </Button>
    </div>
  );
}
