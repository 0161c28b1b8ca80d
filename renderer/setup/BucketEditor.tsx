import { Plus } from 'lucide-react';
import type { Setup } from '../../core/session/index.ts';
import { convert } from '../../core/units/index.ts';
import { Button } from '../components/Button.tsx';
import { QuantityField } from '../components/QuantityField.tsx';
import { useWords } from '../hooks/use-words.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import styles from './RowEditor.module.css';

type Point = Setup['fluidSystem']['bucket']['points'][number];

/** What was caught in a bottle, at which setting and in which time. */
export function BucketEditor({ sheet }: { sheet: Sheet }) {
  const { screens } = useWords();
  const said = screens.setup.bucket;
  const { points } = sheet.doc.fluidSystem.bucket;
  const set = (next: readonly Point[]) => sheet.put('fluidSystem.bucket.points', next);
  const change = (i: number, patch: Partial<Point>) =>
    set(points.map((p, at) => (at === i ? { ...p, ...patch } : p)));
  const add = () => {
    const setting_percent = points.length === 0 ? 100 : 50;
    set([...points, { setting_percent, time_s: 60, volume_mL: 100, mass_g: null }]);
  };
  return (
    <div className={styles.editor}>
      <p className={styles.why}>{said.why}</p>
      {points.map((point, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a point has no name, its place is all it is known by
        <div key={i} className={styles.point}>
          <QuantityField
            label={said.setting}
            kind="share"
            value={{ value: point.setting_percent, unit: '%' }}
            onChange={(v) => v && change(i, { setting_percent: v.value })}
            step={5}
          />
          <QuantityField
            label={said.time}
            kind="time"
            value={{ value: point.time_s, unit: 's' }}
            onChange={(v) => v && change(i, { time_s: convert(v.value, v.unit, 's') })}
            step={5}
          />
          <QuantityField
            label={said.volume}
            kind="volume"
            firstUnit="mL"
            value={point.volume_mL === null ? null : { value: point.volume_mL, unit: 'mL' }}
            onChange={(v) => v && change(i, { volume_mL: convert(v.value, v.unit, 'mL') })}
            step={5}
          />
          <Button look="plain" onPress={() => set(points.filter((_, at) => at !== i))}>
            {said.remove}
          </Button>
        </div>
      ))}
      <Button look="plain" onPress={add}>
        <Plus aria-hidden />
        {said.add}
      </Button>
    </div>
  );
}
