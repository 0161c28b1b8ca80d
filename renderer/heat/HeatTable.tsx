import { explainManifold } from '../../core/ladder/index.ts';
import { type Explanation, fromSi } from '../../core/units/index.ts';
import table from '../components/Table.module.css';
import { useWords } from '../hooks/use-words.tsx';
import { AskedHead } from '../where-from/AskedHead.tsx';
import type { HeatNow } from './use-heat.ts';

/** The charge at each place of its way, spray on beside spray off. */
export function HeatTable({ now }: { now: HeatNow }) {
  const { screens, show } = useWords();
  const said = screens.heat;
  // The unit of a fluid's density would show air as thousandths.
  const airDensity = show.units.length === 'ft' ? 'lb/ft3' : 'kg/m3';
  // Before the nozzle there is no fluid of which a share could have evaporated.
  const nozzle = now.wet.states.findIndex((s) => s.station === 'spray');
  const of = (along: HeatNow['wet'], id: string) => along.explanations.find((e) => e.id === id);
  const ambient = now.wet.states[0];
  const heads: readonly (readonly [string, Explanation | undefined])[] = [
    [said.pressure(show.unit('pressure')), ambient && explainManifold(ambient.air.pressure, now.boost)],
    [said.wet(show.unit('temperature')), of(now.wet, 'charge/evaporation') ?? of(now.wet, 'charge/cooler')],
    [said.dry(show.unit('temperature')), of(now.dry, 'charge/cooler') ?? of(now.dry, 'charge/compressor')],
    [said.density(show.symbol(airDensity, 'density')), of(now.wet, 'charge/density')],
    [said.evaporated, of(now.wet, 'charge/drops')],
  ];
  return (
    <table className={table.table}>
      <thead>
        <tr>
          <th scope="col">{said.station}</th>
          {heads.map(([title, explanation]) => (
            <th key={title} scope="col" className={table.number}>
              <AskedHead title={title} explanation={explanation} />
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {now.wet.states.map((state, i) => {
          const dry = now.dry.states.find((s) => s.station === state.station);
          return (
            <tr key={state.station}>
              <th scope="row">{said.stations[state.station]}</th>
              <td className={table.number}>{show.bare(state.air.pressure, 'pressure')}</td>
              <td className={table.number}>{show.bare(state.air.temperature, 'temperature', 0)}</td>
              <td className={table.number}>{dry ? show.bare(dry.air.temperature, 'temperature', 0) : '–'}</td>
              <td className={table.number}>
                {show.number(fromSi(state.density, airDensity), airDensity === 'kg/m3' ? 2 : 4)}
              </td>
              <td className={table.number}>
                {now.wet.drops && i >= nozzle ? show.quantity(state.evaporatedShare, 'share', 0) : '–'}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
