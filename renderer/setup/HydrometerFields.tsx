import { useState } from 'react';
import { fluidOf } from '../../core/fluids/index.ts';
import { convert, type TypedValue } from '../../core/units/index.ts';
import { Button } from '../components/Button.tsx';
import field from '../components/Field.module.css';
import { ProblemList } from '../components/ProblemList.tsx';
import { QuantityField } from '../components/QuantityField.tsx';
import { Select } from '../components/Select.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import section from './SetupSection.module.css';

type Scale = 'density' | 'ethanol-by-volume';
type Alcohol = 'methanol' | 'ethanol';

/** A reading on a fluid of unknown strength, and the mix that it means; taken over with one press. */
export function HydrometerFields({ sheet }: { sheet: Sheet }) {
  const { screens, show } = useWords();
  const { say } = useToasts();
  const said = screens.setup.hydrometer;
  const { mix, fluid_C } = sheet.doc.fluidSystem;
  const [scale, setScale] = useState<Scale>('density');
  const [alcohol, setAlcohol] = useState<Alcohol>(
    (mix?.ethanol_percent ?? 0) > (mix?.methanol_percent ?? 0) ? 'ethanol' : 'methanol',
  );
  const [reading, setReading] = useState<TypedValue | null>(null);
  const [temperature, setTemperature] = useState<TypedValue | null>(null);
  const at_C = temperature ? convert(temperature.value, temperature.unit, 'C') : fluid_C;
  const found =
    reading &&
    fluidOf({
      temperature_C: at_C,
      hydrometer: {
        alcohol,
        scale,
        value: convert(reading.value, reading.unit, scale === 'density' ? 'kg/m3' : '%'),
      },
    });
  const strength = found?.ok ? found.value : null;
  const share = (value: number) => show.quantity(value, 'share', 1);
  const take = () => {
    if (!strength) return;
    const percent = (value: number) => Number((100 * value).toFixed(1));
    const isTaken = sheet.put('fluidSystem.mix', {
      ...mix,
      by: 'mass',
      methanol_percent: percent(strength.mix.massShares.methanol),
      ethanol_percent: percent(strength.mix.massShares.ethanol),
    });
    if (isTaken) say(said.used);
  };
  return (
    <>
      <p className={field.hint}>{said.why}</p>
      <div className={section.fields}>
        <Select<Scale>
          label={said.scale}
          options={(['density', 'ethanol-by-volume'] as const).map((id) => ({ id, label: said.scales[id] }))}
          value={scale}
          onChange={(next) => {
            setScale(next);
            setReading(null);
          }}
        />
        <QuantityField
          key={scale}
          label={said.reading}
          kind={scale === 'density' ? 'density' : 'share'}
          value={reading}
          onChange={setReading}
          step={scale === 'density' ? 0.001 : 1}
        />
        <QuantityField
          label={said.temperature}
          kind="temperature"
          value={temperature}
          onChange={setTemperature}
          fallback={show.bare(fluid_C + 273.15, 'temperature')}
          step={1}
        />
        <Select<Alcohol>
          label={said.alcohol}
          options={(['methanol', 'ethanol'] as const).map((id) => ({ id, label: said.alcohols[id] }))}
          value={alcohol}
          onChange={setAlcohol}
        />
      </div>
      {found && !found.ok && <ProblemList problems={found.problems} />}
      {strength && (
        <div className={section.found} role="status">
          <p>
            {said.found(
              share(strength.mix.massShares[alcohol]),
              share(strength.strength?.massShareHalf ?? 0),
              share(strength.poured[alcohol]),
            )}
          </p>
          <Button onPress={take}>{said.use}</Button>
        </div>
      )}
    </>
  );
}
