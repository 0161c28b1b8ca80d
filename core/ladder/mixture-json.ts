import { z } from 'zod';
import { NoteJsonSchema, notesJson } from '../result/index.ts';
import { fromSi, tidy } from '../units/index.ts';
import type { SetupMixture } from './mixture-of-setup.ts';

const number = z.number();
const range = z.tuple([number, number]);

/** What `mixture` answers outside the program: units in the keys, boost gauge, shares of petrol in percent. */
export const MixtureJsonSchema = z.object({
  gaugeScale: number,
  rows: z.array(
    z.object({
      boost_kPa: number,
      engineSpeed_rpm: number,
      air_g_s: number,
      petrol_g_s: number,
      fluid_g_s: number,
      /** Of the fuel's air demand. */
      alcohol_percent: number,
      stoichiometric: number,
      /** Present and with the blend. */
      lambda: number,
      target: number,
      gauge: number,
      /** Air over all that burns, at the target. */
      airFuel: number,
      bestPower: range,
      /** Change of petrol in the table; 0 where a loop does it. */
      tableChange_percent: number,
      /** Trim that the loop will show. */
      expectedTrim_percent: number,
      /** Where nobody changes anything. */
      lambdaIfLeft: number,
      /** Power that staying at the present lambda costs. */
      cost_percent: range,
    }),
  ),
  notes: z.array(NoteJsonSchema),
});
export type MixtureJson = z.infer<typeof MixtureJsonSchema>;

/** The mixture over boost for scripts and files. */
export function mixtureJson(mixture: SetupMixture): MixtureJson {
  const { rows, scale, notes } = mixture.plan;
  return {
    gaugeScale: scale,
    rows: rows.map((row) => ({
      boost_kPa: tidy(row.boost / 1e3),
      engineSpeed_rpm: tidy(fromSi(row.engineSpeed_rad_s, 'rpm')),
      air_g_s: tidy(row.airFlow * 1e3),
      petrol_g_s: tidy(row.demand.petrolFlow * 1e3),
      fluid_g_s: tidy(row.fluidFlow * 1e3),
      alcohol_percent: tidy(row.demand.alcoholShare * 100),
      stoichiometric: tidy(row.demand.stoichiometric),
      lambda: tidy(row.target - row.shift),
      target: tidy(row.target),
      gauge: tidy(row.gauge),
      airFuel: tidy(row.airFuel),
      bestPower: [tidy(row.bestPower[0]), tidy(row.bestPower[1])],
      tableChange_percent: tidy(row.fuelling.tableChange * 100),
      expectedTrim_percent: tidy(row.fuelling.expectedTrim * 100),
      lambdaIfLeft: tidy(row.fuelling.lambdaIfLeft),
      cost_percent: [tidy(row.cost.low * 100), tidy(row.cost.high * 100)],
    })),
    notes: notesJson([...mixture.notes, ...notes]),
  };
}
