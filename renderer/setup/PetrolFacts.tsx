import { explainPetrol, petrolBlend } from '../../core/fluids/index.ts';
import { FactList } from '../components/FactList.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { WhereFrom } from '../where-from/WhereFrom.tsx';

/** The petrol of the car: what its ethanol makes of it. */
export function PetrolFacts({ ethanol_percent }: { ethanol_percent: number }) {
  const { screens, show } = useWords();
  const said = screens.setup.facts;
  const blend = petrolBlend(ethanol_percent / 100);
  if (!blend.ok) return null;
  return (
    <FactList
      facts={[
        {
          name: said.stoich,
          value: (
            <WhereFrom
              value={show.number(blend.value.stoichiometricAirFuel, 2)}
              what={said.stoich}
              explanation={explainPetrol(blend.value, ethanol_percent / 100)}
            />
          ),
        },
      ]}
    />
  );
}
