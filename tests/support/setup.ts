import { type Setup, type SetupInput, SetupSchema } from '../../core/injection/index.ts';
import { convert } from '../../core/units/index.ts';

/** An invented car: 250 hp at 6,000 rpm and 1.0 bar, half and half methanol, a 10 bar pump held at 8.5 bar. */
const invented: SetupInput = {
  engine: {
    displacement_L: 2.0,
    cylinders: 4,
    compressionRatio: 9.5,
    compressor: 'turbo',
    hasCooler: true,
    peakPower_kW: convert(250, 'hp', 'kW'),
    peakPower_rpm: 6000,
    peakBoost_kPa: 100,
    boostCurve: [
      { engineSpeed_rpm: 2500, boost_kPa: 20 },
      { engineSpeed_rpm: 3500, boost_kPa: 100 },
      { engineSpeed_rpm: 6500, boost_kPa: 100 },
    ],
    pullDuration_s: 8,
    fuelConsumption_kg_kWh: 0.335,
  },
  fluidSystem: {
    nozzles: [
      { name: '100', flow_mL_min: 100 },
      { name: '175', flow_mL_min: 175 },
      { name: '250', flow_mL_min: 250 },
      { name: '375', flow_mL_min: 375 },
    ],
    place: 'after-cooler',
    pump: { shutPressure_kPa: 1400, openFlow_mL_min: 2400, control: 'bypass', setPressure_kPa: 850 },
    checkValve_kPa: 40,
    line: { length_m: 3, bore_mm: 4 },
    metering: 'valve-duty',
    tank_L: 4,
    reserve_L: 0.5,
  },
};

type Deep<T> = T extends readonly unknown[] ? T : T extends object ? { [K in keyof T]?: Deep<T[K]> } : T;

function merged<T>(base: T, change: Deep<T>): T {
  if (typeof base !== 'object' || base === null || Array.isArray(base) || change === null) return change as T;
  const out = { ...base } as Record<string, unknown>;
  for (const [key, value] of Object.entries(change as Record<string, unknown>)) {
    const old = out[key];
    const isPlain = typeof value === 'object' && value !== null && !Array.isArray(value);
    out[key] = isPlain && typeof old === 'object' && old !== null ? merged(old, value) : value;
  }
  return out as T;
}

/** The invented car with some fields of its own. */
export function setupWith(change: Deep<SetupInput> = {}): Setup {
  return SetupSchema.parse(merged(invented, change));
}
