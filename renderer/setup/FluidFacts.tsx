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
    .map((id) => `${id} ${show.quantity(sheet.mix.massShares[id], 'share')}`);
  return (
    <>
      <FactList
        facts={[
          {
            name: said.density,
            value: (
              <WhereFrom
                value={show.quantity(sheet.density, 'density', 3)}
                what={said.density}
                explanation={why('density')}
              />
            ),
            small: shares.length > 0 ? said.byMass(shares.join(', ')) : '',
          },
          { name: said.freezes, value: show.quantity(sheet.freezing.temperature, 'temperature', 0) },
          {
            name: said.flash,
            value: sheet.flash ? show.quantity(sheet.flash.cautious, 'temperature', 0) : said.flashNone,
          },
          {
            name: said.latent,
            value: (
              <WhereFrom
                value={show.quantity(sheet.latentHeat, 'energyPerMass', 0)}
                what={said.latent}
                explanation={why('latent-heat')}
              />
            ),
          },
        ]}
      />
      {sheet.notes.map((n) => (
        <p key={n.code}>{note(n)}</p>
      ))}
    </>
  );
}
