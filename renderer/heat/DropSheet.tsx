import { Caution } from '../components/Caution.tsx';
import { FactList } from '../components/FactList.tsx';
import { SideSheet } from '../components/SideSheet.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import type { HeatNow } from './use-heat.ts';

/** How much evaporates in time, each number with its origin; what a place of the nozzle can wear out. */
export function DropSheet({ now }: { now: HeatNow }) {
  const { screens, show, note } = useWords();
  const said = screens.heat;
  const { wet } = now;
  const share = show.quantity(wet.port.evaporatedShare, 'share', 0);
  const ms = (time: number) =>
    Number.isFinite(time) ? said.milliseconds(show.number(time * 1e3)) : said.forever;
  const at = (station: string) => wet.states.find((s) => s.station === station);
  const temperature = (station: string) => {
    const state = at(station);
    return state ? show.quantity(state.air.temperature, 'temperature', 0) : null;
  };
  const fact = (name: string, value: string | null, id: string) =>
    value === null
      ? []
      : [
          {
            name,
            value: (
              <WhereFrom value={value} what={name} explanation={wet.explanations.find((e) => e.id === id)} />
            ),
          },
        ];
  const worn = wet.notes.filter((n) => n.code === 'charge/spray-before-compressor');
  return (
    <SideSheet
      label={said.title}
      kicker={said.title}
      title={wet.drops ? said.sideTitle(share) : said.sideNone}
      why={wet.drops ? said.sideWhy : ''}
    >
      <FactList
        facts={[
          ...fact(said.facts.compressor, temperature('compressor'), 'charge/compressor'),
          ...fact(said.facts.cooler, temperature('cooler'), 'charge/cooler'),
          ...(wet.drops
            ? [
                ...fact(said.facts.evaporated, share, 'charge/evaporation'),
                ...fact(said.facts.lifetime, ms(wet.drops.lifetime), 'charge/drops'),
                ...fact(said.facts.residence, ms(wet.drops.residence), 'charge/drops'),
              ]
            : []),
        ]}
      />
      {worn.map((n) => (
        <Caution key={n.code}>{note(n)}</Caution>
      ))}
    </SideSheet>
  );
}
