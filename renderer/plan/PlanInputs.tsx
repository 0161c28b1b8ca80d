import type { Plan } from '../../core/injection/index.ts';
import { FactList } from '../components/FactList.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { planFacts } from '../setup/plan-facts.tsx';
import type { FieldSpec } from '../sheets/field-specs.ts';
import { SheetField } from '../sheets/SheetField.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import { NozzleChoices } from './NozzleChoices.tsx';
import styles from './PlanInputs.module.css';

const target: readonly FieldSpec[] = [
  { type: 'quantity', path: 'engine.peakPower_kW', kind: 'power', unit: 'kW', step: 1 },
  { type: 'quantity', path: 'engine.peakBoost_kPa', kind: 'boost', unit: 'kPa', step: 0.05 },
  {
    type: 'quantity',
    path: 'targets.fluidRatio_percent',
    kind: 'share',
    unit: '%',
    step: 1,
    fallback: { value: 15, unit: '%' },
    isAlwaysSet: true,
  },
];
const fluid: readonly FieldSpec[] = [
  { type: 'quantity', path: 'fluidSystem.mix.methanol_percent', kind: 'share', unit: '%', step: 1 },
];

/** What the plan stands on, with what follows from it in small print. */
export function PlanInputs({ sheet, plan }: { sheet: Sheet; plan: Plan | null }) {
  const words = useWords();
  const said = words.screens.plan;
  return (
    <section className={styles.inputs} aria-label={said.inputs}>
      <h2>{said.target}</h2>
      {target.map((spec) => (
        <SheetField key={spec.path} spec={spec} sheet={sheet} />
      ))}
      <h2>{said.fluid}</h2>
      {fluid.map((spec) => (
        <SheetField key={spec.path} spec={spec} sheet={sheet} />
      ))}
      {plan && (
        <>
          <h2>{said.nozzle}</h2>
          <NozzleChoices plan={plan} sheet={sheet} />
          {plan.nozzle.notes.slice(1).map((n) => (
            <p key={n.code}>{words.note(n)}</p>
          ))}
          <h2>{said.atNozzle}</h2>
          <FactList facts={planFacts(plan, words)} />
        </>
      )}
    </section>
  );
}
