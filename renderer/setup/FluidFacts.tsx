import { useMemo } from 'react';
import { fluidOf } from '../../core/fluids/index.ts';
import { FactList } from '../components/FactList.tsx';
import { ProblemList } from '../components/ProblemList.tsx';
import { useWords } from '../hooks/use-words.tsx';
import type { SheetDoc } from '../sheets/sheet-doc.ts';
import { WhereFrom } from '../where-from/WhereFrom.tsx';

/** The mix as it pours, burns and freezes. */
export function FluidFacts({ doc }: { doc: SheetDoc }) {
  const { screens, show, note } = useWords();
  const said = screens.setup.facts;
  const { mix, fluid_C } = doc.fluidSystem;
  const fluid = useMemo(
    () => mix && fluidOf({ ...mix, temperature_C: fluid_C, ambient_C: doc.conditions.ambient_C }),
    [mix, fluid_C, doc.conditions.ambient_C],
  );
  if (!fluid) return null;
  if (!fluid.ok) return <ProblemList problems={fluid.problems} />;
  const sheet = fluid.value;
  const why = (id: string) => sheet.explanations.find((e) => e.id === id || e.id.endsWith(`/${id}`));
  const shares = (['methanol', 'ethanol'] as const)
    .filter((id) => sheet.mix.massShares[id] > 0)
    .map(
      (id) => `${screens.setup.hydrometer.alcohols[id]} ${show.quantity(sheet.mix.massShares[id], 'share')}`,
    );
  const fact = (name: string, value: string, id: string, small = '') => ({
    name,
    value: <WhereFrom value={value} what={name} explanation={why(id)} />,
    small,
  });
  return (
    <>
      <FactList
        facts={[
          fact(
            said.density,
            show.quantity(sheet.density, 'density', 3),
            'density',
            shares.length > 0 ? said.byMass(shares.join(', ')) : '',
          ),
          fact(said.contraction, show.quantity(sheet.contraction, 'share'), 'density'),
          fact(said.freezes, show.quantity(sheet.freezing.temperature, 'temperature', 0), 'freezing-point'),
          sheet.flash
            ? fact(said.flash, show.quantity(sheet.flash.cautious, 'temperature', 0), 'flash-point')
            : { name: said.flash, value: said.flashNone },
          fact(said.burns, sheet.canBurnAtAmbient ? said.burnsYes : said.burnsNo, 'flash-point'),
          fact(said.latent, show.quantity(sheet.latentHeat, 'energyPerMass', 0), 'latent-heat'),
          fact(said.heatCapacity, `${show.number(sheet.heatCapacity / 1e3, 2)} kJ/(kg K)`, 'heat-capacity'),
          fact(
            said.vapour,
            show.quantity(
              sheet.partialPressures.water + sheet.partialPressures.methanol + sheet.partialPressures.ethanol,
              'pressure',
              1,
            ),
            'vapour-pressure',
          ),
          fact(said.air, `${show.number(sheet.airDemand, 2)} kg/kg`, 'air-demand', said.ofMix),
          fact(
            said.heating,
            `${show.number(sheet.lowerHeatingValue / 1e6, 1)} MJ/kg`,
            'heating-value',
            said.ofMix,
          ),
        ]}
      />
      {sheet.notes.map((n) => (
        <p key={n.code}>{note(n)}</p>
      ))}
    </>
  );
}
