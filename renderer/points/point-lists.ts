import type { ScreenWords } from '../../core/words/index.ts';
import { type SheetDoc, valueAt } from '../sheets/sheet-doc.ts';
import type { PointColumn, PointRow } from './point-rows.ts';

type Labels = ScreenWords['setup']['points']['columns'];
type Column = Omit<PointColumn, 'label'> & { readonly label: keyof Labels };
export type PointListId = keyof ScreenWords['setup']['points']['lists'];

const speed: Column = { key: 'engineSpeed_rpm', label: 'speed', kind: 'engineSpeed', unit: 'rpm' };
const boost: Column = { key: 'boost_kPa', label: 'boost', kind: 'boost', unit: 'kPa' };

/** Every list of points that a setup holds: where it is kept and what its columns are. */
export const pointLists: {
  readonly [L in PointListId]: { readonly path: string; readonly columns: readonly Column[] };
} = {
  boostCurve: { path: 'engine.boostCurve', columns: [speed, boost] },
  powerCurve: {
    path: 'engine.powerCurve',
    columns: [speed, { key: 'power_kW', label: 'power', kind: 'power', unit: 'kW' }],
  },
  injectorDuty: {
    path: 'engine.injectors.duty',
    columns: [
      speed,
      { key: 'duty_percent', label: 'duty', kind: 'share', unit: '%' },
      { ...boost, isOptional: true },
    ],
  },
  ratioProfile: {
    path: 'targets.ratioProfile',
    columns: [boost, { key: 'ratio_percent', label: 'ratio', kind: 'share', unit: '%' }],
  },
  pump: {
    path: 'fluidSystem.pump.points',
    columns: [
      { key: 'pressure_kPa', label: 'pressure', kind: 'fluidPressure', unit: 'kPa' },
      { key: 'flow_mL_min', label: 'flow', kind: 'volumeFlow', unit: 'mL/min' },
    ],
  },
  bucket: {
    path: 'fluidSystem.bucket.points',
    columns: [
      { key: 'setting_percent', label: 'setting', kind: 'share', unit: '%' },
      { key: 'time_s', label: 'time', kind: 'time', unit: 's' },
      {
        key: 'volume_mL',
        label: 'volume',
        kind: 'smallVolume',
        unit: 'mL',
        shownIn: 'mL',
        isOptional: true,
      },
      { key: 'mass_g', label: 'mass', kind: 'mass', unit: 'g', shownIn: 'g', isOptional: true },
    ],
  },
  refills: {
    path: 'fluidSystem.refills',
    columns: [
      { key: 'filled_L', label: 'filled', kind: 'tankVolume', unit: 'L' },
      { key: 'pulls', label: 'pulls', kind: 'number', unit: '' },
    ],
  },
};

/** The points that stand in the document now. */
export function pointsAt(doc: SheetDoc, id: PointListId): readonly PointRow[] {
  const rows = valueAt(doc, pointLists[id].path);
  return Array.isArray(rows) ? (rows as PointRow[]) : [];
}
