import type { Plan } from '../../core/injection/index.ts';
import type { Fact } from '../components/FactList.tsx';
import type { Words } from '../hooks/use-words.tsx';
import { WhereFrom } from '../where-from/WhereFrom.tsx';

/** The numbers of a plan that a glance needs, each with its origin. */
export function planFacts(plan: Plan, { screens, show, note }: Words): Fact[] {
  const said = screens.setup.facts;
  const why = (id: string) => plan.explanations.find((e) => e.id === id);
  const delay = plan.driven.arrival?.delay ?? null;
  const [fit] = plan.nozzle.notes;
  return [
    {
      name: said.fuel,
      value: (
        <WhereFrom
          value={show.quantity(plan.fuel.at(plan.path.peakSpeed_rad_s, plan.path.peakBoost), 'massFlow')}
          what={said.fuel}
          explanation={plan.fuel.explanation}
        />
      ),
    },
    {
      name: said.need,
      value: (
        <WhereFrom
          value={show.quantity(plan.need.fluid, 'volumeFlow')}
          what={said.need}
          explanation={plan.need.explanation}
        />
      ),
    },
    ...(plan.need.ruleOfThumb === null
      ? []
      : [
          {
            name: said.rule,
            value: (
              <WhereFrom
                value={show.quantity(plan.need.ruleOfThumb, 'volumeFlow')}
                what={said.rule}
                explanation={why('injection/rule-of-thumb')}
              />
            ),
            small: said.ruleSmall,
          },
        ]),
    {
      name: said.delivered,
      value: (
        <WhereFrom
          value={show.quantity(plan.peak.flow, 'volumeFlow')}
          what={said.delivered}
          explanation={why('delivery/nozzle-flow')}
        />
      ),
      small: fit ? note(fit) : '',
    },
    {
      name: said.difference,
      value: (
        <WhereFrom
          value={show.span(plan.peak.pressureDifference, 'fluidPressure', 1)}
          what={said.difference}
          explanation={why('delivery/pressure-difference')}
        />
      ),
    },
    ...(delay === null
      ? []
      : [
          {
            name: said.arrives,
            value: (
              <WhereFrom
                value={show.quantity(delay, 'time', 1)}
                what={said.arrives}
                explanation={why('injection/arrival')}
              />
            ),
          },
        ]),
    ...(plan.system.bucket
      ? [
          {
            name: said.bucketFactor,
            value: (
              <WhereFrom
                value={show.number(plan.system.bucket.correction.factor, 3)}
                what={said.bucketFactor}
                explanation={why('delivery/bucket')}
              />
            ),
          },
          {
            name: said.bucketScatter,
            value: (
              <WhereFrom
                value={show.quantity(plan.system.bucket.scatter, 'share', 1)}
                what={said.bucketScatter}
                explanation={why('delivery/bucket')}
              />
            ),
          },
        ]
      : []),
  ];
}
