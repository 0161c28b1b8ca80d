import { describe, expect, it } from 'vitest';
import {
  frictionFactor,
  holeArea,
  lineLoss,
  nozzleFlow,
  reynoldsNumber,
} from '../../../core/delivery/index.ts';
import { mixDensity, mixPoured } from '../../../core/fluids/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { celsius } from '../../../core/units/index.ts';
import { checkValues, checkValuesWhere } from '../../support/check-values.ts';
import { rated } from '../../support/delivery.ts';
import { inputNumber, itAgrees } from '../../support/published.ts';

const covered = new Set<string>();
const agrees = (id: string, answer: Parameters<typeof itAgrees>[1]) => {
  covered.add(id);
  itAgrees(id, answer);
};
const water = 998.2;
const flowRatio = (pressureRatio: number) =>
  unwrap(nozzleFlow(rated(300), pressureRatio * 4e5, water)) / unwrap(nozzleFlow(rated(300), 4e5, water));

describe('nozzle and line against published values', () => {
  agrees('orifice-sqrt', (v) => flowRatio(inputNumber(v, 'pressure_ratio')));
  for (const v of checkValuesWhere((c) => c.id.startsWith('orifice-ratio-'), 4))
    agrees(v.id, (c) => flowRatio(inputNumber(c, 'pressure_difference_ratio')));
  agrees('orifice-density', () => {
    // With our own density of the mix, not the one printed beside the value.
    const mix = unwrap(mixDensity(unwrap(mixPoured({ methanol: 0.5 })), celsius(20)));
    return unwrap(nozzleFlow(rated(300), 5e5, mix)) / unwrap(nozzleFlow(rated(300), 5e5, water));
  });

  agrees('orifice-methanol', (v) => {
    const density = inputNumber(v, 'density');
    const [pipe, bore] = [inputNumber(v, 'pipe_mm') / 1e3, inputNumber(v, 'orifice_mm') / 1e3];
    const pressureDifference =
      9.81 * inputNumber(v, 'mercury_manometer_m') * (inputNumber(v, 'density_mercury') - density);
    // Area is proportional to flow: ask for the area of 1 m^3/s and divide.
    const areaOfOne = holeArea({
      flow: 1,
      pressureDifference,
      density,
      dischargeCoefficient: inputNumber(v, 'discharge_coefficient'),
      diameterRatio: bore / pipe,
    });
    const flow = ((Math.PI / 4) * bore ** 2) / areaOfOne;
    return { flow_m3_s: flow, velocity_m_s: flow / ((Math.PI / 4) * pipe ** 2) };
  });

  agrees('nozzle-area', (v) => {
    const rpm = inputNumber(v, 'rpm');
    const density = inputNumber(v, 'density');
    const fuel_kg_s = (inputNumber(v, 'brake_power_kW') * inputNumber(v, 'bsfc_kg_kWh')) / 3600;
    const injections_s = (rpm / 60 / 2) * inputNumber(v, 'cylinders');
    const open_s = inputNumber(v, 'injection_deg') / 360 / (rpm / 60);
    const area = holeArea({
      flow: fuel_kg_s / injections_s / density / open_s,
      pressureDifference: inputNumber(v, 'mean_pressure_difference_bar') * 1e5,
      density,
      dischargeCoefficient: inputNumber(v, 'discharge_coefficient'),
    });
    const holes = inputNumber(v, 'holes');
    return { area_mm2: area * 1e6, hole_mm: Math.sqrt((4 / Math.PI) * (area / holes)) * 1e3 };
  });

  agrees('jet-diameter', (v) => {
    // The book's own air side: isentropic expansion to the throat at cp 1005 and k 1.4, R 287.
    const inlet = inputNumber(v, 'inlet_bar') * 1e5;
    const inletTemperature = inputNumber(v, 'inlet_C') + 273;
    const ideal = inputNumber(v, 'air_velocity_m_s') / inputNumber(v, 'velocity_coefficient');
    const throatTemperature = inletTemperature - ideal ** 2 / (2 * 1005);
    const throat = inlet * (throatTemperature / inletTemperature) ** 3.5;
    const airDensity = throat / (287 * throatTemperature);
    const air_kg_s = inputNumber(v, 'air_kg_min') / 60;
    const throatArea = air_kg_s / (airDensity * inputNumber(v, 'air_velocity_m_s'));
    const density = inputNumber(v, 'density');
    const jet = holeArea({
      flow: inputNumber(v, 'fuel_kg_min') / 60 / density,
      pressureDifference: 0.75 * (inlet - throat),
      density,
      dischargeCoefficient: inputNumber(v, 'discharge_coefficient'),
    });
    const diameter = (area: number) => Math.sqrt((4 / Math.PI) * area);
    return { throat_cm: diameter(throatArea) * 100, jet_mm: diameter(jet) * 1e3 };
  });

  agrees('spray-time', (v) => {
    // Same way at a speed that goes with the root of the pressure difference, as flow through one hole does.
    const [low = 0, high = 0] = v.inputs.pressure_bar as number[];
    const back = inputNumber(v, 'back_pressure_bar');
    const speed = (bar: number) => unwrap(nozzleFlow(rated(300), (bar - back) * 1e5, 850));
    return (inputNumber(v, 'time_ms') * speed(low)) / speed(high);
  });

  agrees('line-loss-laminar', (v) => {
    const bore = inputNumber(v, 'diameter_mm') / 1e3;
    const density = inputNumber(v, 'specific_weight_N_m3') / inputNumber(v, 'g');
    const loss = lineLoss(
      { length: inputNumber(v, 'length_m'), bore },
      { density, viscosity: inputNumber(v, 'kinematic_viscosity_m2_s') * density },
      inputNumber(v, 'velocity_m_s') * (Math.PI / 4) * bore ** 2,
    );
    return { head_m: loss / inputNumber(v, 'specific_weight_N_m3'), pressure_bar: loss / 1e5 };
  });

  agrees('line-loss-small-bore', (v) => {
    const line = { length: inputNumber(v, 'length_m'), bore: inputNumber(v, 'bore_mm') / 1e3 };
    const liquid = { density: inputNumber(v, 'density'), viscosity: inputNumber(v, 'viscosity_mPa_s') / 1e3 };
    const flow = inputNumber(v, 'flow_mL_min') / 6e7;
    return {
      reynolds: reynoldsNumber(line, liquid, flow),
      velocity_m_s: flow / ((Math.PI / 4) * line.bore ** 2),
      loss_kPa: lineLoss(line, liquid, flow) / 1e3,
    };
  });

  it('smooth-pipe friction at Re 1e5 is 0.0178 (Blasius; the Moody chart reads 0.018)', () => {
    expect(frictionFactor(1e5)).toBeCloseTo(0.0178, 4);
  });

  it('every published value on delivery is checked here', () => {
    const missed = checkValues.filter((v) => v.topic === 'delivery' && !covered.has(v.id)).map((v) => v.id);
    expect(missed).toEqual([]);
  });
});
