import {
  imperialUnits,
  metricUnits,
  offeredUnits,
  type ShownKind,
  type UnitChoice,
} from '../../core/units/index.ts';
import { readNumber } from '../../core/words/index.ts';
import { Dialog } from '../components/Dialog.tsx';
import { Segmented } from '../components/Segmented.tsx';
import { Select } from '../components/Select.tsx';
import { TextField } from '../components/TextField.tsx';
import { usePreferences } from '../hooks/use-preferences.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './UnitsDialog.module.css';

/** The usual scale of a gauge that shows air/fuel: petrol's, whatever burns (common practice). */
const usualScale = 14.7;

/** Units by quantity: all metric, all imperial, or mixed as the trade does. */
export function UnitsDialog({ onClose }: { onClose: () => void }) {
  const { screens, show } = useWords();
  const { preferences, set } = usePreferences();
  const said = screens.units;
  const choice = preferences.units;
  const change = (patch: Partial<UnitChoice>) => set({ units: { ...choice, ...patch } });
  const isSame = (other: UnitChoice) => JSON.stringify(other) === JSON.stringify({ ...other, ...choice });
  const system = isSame(metricUnits) ? 'metric' : isSame(imperialUnits) ? 'imperial' : 'mixed';
  const kinds = Object.keys(said.kinds) as (keyof typeof said.kinds & ShownKind)[];
  return (
    <Dialog title={said.title} onClose={onClose} shape="wide">
      <p>{said.intro}</p>
      <Segmented
        label={said.system}
        options={[
          { id: 'metric', label: said.metric },
          { id: 'imperial', label: said.imperial },
          ...(system === 'mixed' ? [{ id: 'mixed' as const, label: said.mixed }] : []),
        ]}
        value={system}
        onChange={(id) => {
          if (id === 'metric') set({ units: metricUnits });
          if (id === 'imperial') set({ units: imperialUnits });
        }}
      />
      <div className={styles.kinds}>
        {kinds.map((kind) => (
          <Select
            key={kind}
            label={said.kinds[kind]}
            options={offeredUnits(kind).map((u) => ({ id: u.id, label: show.symbol(u.id, kind) }))}
            value={choice[kind]}
            onChange={(unit) => change({ [kind]: unit })}
          />
        ))}
      </div>
      <div className={styles.mixture}>
        <Segmented
          label={said.mixture}
          options={[
            { id: 'lambda', label: said.lambda },
            { id: 'scale', label: said.airFuel },
          ]}
          value={choice.gaugeScale === null ? 'lambda' : 'scale'}
          onChange={(id) => change({ gaugeScale: id === 'lambda' ? null : usualScale })}
        />
        {choice.gaugeScale !== null && (
          <TextField
            label={said.scale}
            defaultValue={show.number(choice.gaugeScale, 1)}
            onChange={(text) => {
              const scale = readNumber(text, show.language);
              if (scale !== null && scale > 0) change({ gaugeScale: scale });
            }}
          />
        )}
      </div>
    </Dialog>
  );
}
