import { memo, type ReactNode } from 'react';
import type { Plan } from '../../core/injection/index.ts';
import type { Result } from '../../core/result/index.ts';
import { Caution } from '../components/Caution.tsx';
import { FactList } from '../components/FactList.tsx';
import { ProblemList } from '../components/ProblemList.tsx';
import { SideSheet } from '../components/SideSheet.tsx';
import { useWords } from '../hooks/use-words.tsx';
import type { SectionId } from '../sheets/field-specs.ts';
import type { SheetDoc } from '../sheets/sheet-doc.ts';
import { CarFollows } from './CarFollows.tsx';
import { FluidFacts } from './FluidFacts.tsx';
import { PetrolFacts } from './PetrolFacts.tsx';
import { planFacts } from './plan-facts.tsx';

type FollowsProps = { readonly section: SectionId; readonly doc: SheetDoc; readonly plan: Result<Plan> };

/** What follows from what was typed, worked out as it is typed. */
export const Follows = memo(function Follows({ section, doc, plan }: FollowsProps) {
  const words = useWords();
  const { screens } = words;
  const said = screens.setup;
  const isFluid = section === 'fluid' || section === 'fit';
  const sheet = (title: string, children: ReactNode) => (
    <SideSheet label={said.follows} kicker={said.follows} title={title}>
      {children}
    </SideSheet>
  );
  if (section === 'car' || section === 'air' || section === 'limits') {
    return sheet(said.followsTitle, <CarFollows section={section} />);
  }
  return sheet(
    plan.ok || section === 'fit' ? said.followsTitle : said.missing,
    <>
      {section !== 'fit' &&
        (plan.ok ? (
          <FactList facts={planFacts(plan.value, words)} />
        ) : (
          <ProblemList problems={plan.problems} />
        ))}
      {section === 'engine' && <PetrolFacts ethanol_percent={doc.engine.ethanol_percent} />}
      {isFluid && <FluidFacts doc={doc} />}
      {isFluid && (doc.fluidSystem.mix?.methanol_percent ?? 0) > 0 && (
        <Caution>{said.caution.methanol}</Caution>
      )}
    </>,
  );
});
