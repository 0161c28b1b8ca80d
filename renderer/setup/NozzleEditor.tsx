import { Plus } from 'lucide-react';
import type { Setup } from '../../core/session/index.ts';
import { convert } from '../../core/units/index.ts';
import { Button } from '../components/Button.tsx';
import { Check } from '../components/Check.tsx';
import { QuantityField } from '../components/QuantityField.tsx';
import { TextField } from '../components/TextField.tsx';
import { useWords } from '../hooks/use-words.tsx';
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
  const { nozzles, fitted } = sheet.doc.fluidSystem;
  const set = (next: readonly Nozzle[]) => sheet.put('fluidSystem.nozzles', next);
  const change = (i: number, patch: Partial<Nozzle>) =>
    set(nozzles.map((n, at) => (at === i ? { ...n, ...patch } : n)));
  const setFitted = (name: string, isFitted: boolean) =>
    sheet.put('fluidSystem.fitted', isFitted ? [...fitted, name] : fitted.filter((f) => f !== name));
  const flowUnit = show.units.volumeFlow;
  const pressureUnit = show.units.fluidPressure;
  const rounded = (value: number, from: string, to: string) =>
    Number(convert(value, from, to).toPrecision(5));
  return (
    <div className={styles.editor}>
      {nozzles.length === 0 && <p>{said.none}</p>}
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
            value={{ value: rounded(nozzle.flow_mL_min, 'mL/min', flowUnit), unit: flowUnit }}
            onChange={(v) => v && change(i, { flow_mL_min: convert(v.value, v.unit, 'mL/min') })}
            step={10}
          />
          <QuantityField
            label={said.at}
            kind="fluidPressure"
            value={{ value: rounded(nozzle.ratedPressure_kPa, 'kPa', pressureUnit), unit: pressureUnit }}
            onChange={(v) =>
              v && v.value > 0 && change(i, { ratedPressure_kPa: convert(v.value, v.unit, 'kPa') })
            }
            step={0.5}
          />
          <Check
            label={said.fitted}
            isSelected={fitted.includes(nozzle.name)}
            onChange={(isFitted) => setFitted(nozzle.name, isFitted)}
          />
          <Button look="plain" onPress={() => set(nozzles.filter((_, at) => at !== i))}>
            {said.remove}
          </Button>
        </div>
      ))}
      <Button look="plain" onPress={() => set([...nozzles, fresh(nozzles.length + 1)])}>
        <Plus aria-hidden />
        {said.add}
      </Button>
    </div>
  );
}
