import { Download } from 'lucide-react';
import { guardCsv, guardSpread, type Plan, type Setup } from '../../core/injection/index.ts';
import type { Explanation } from '../../core/units/index.ts';
import { Button } from '../components/Button.tsx';
import { FactList } from '../components/FactList.tsx';
import { saveFile } from '../handover/save-file.ts';
import { useWords } from '../hooks/use-words.tsx';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import { GuardTable } from './GuardTable.tsx';
import styles from './PlanMore.module.css';
import { remarkGroupOf, remarkGroups } from './remark-groups.ts';

/** Under the curve: how far the tank reaches, what is still normal, what to fall back to, and the remarks. */
export function PlanMore({ plan, setup }: { plan: Plan; setup: Setup }) {
  const { screens, show, note } = useWords();
  const said = screens.plan;
  const { endurance } = plan;
  const asked = (what: string, value: string, explanation: Explanation | undefined) => (
    <WhereFrom value={value} what={what} explanation={explanation} />
  );
  const tank = (what: string, value: number | null) =>
    value === null ? screens.shell.unknown : asked(what, show.number(value, 0), endurance.explanation);
  const why = (id: string) => plan.explanations.find((e) => e.id === id);
  const half = guardSpread(setup, plan.system.bucket?.scatter ?? null);
  const share = (value: number) => `± ${show.quantity(value, 'share', 1)}`;
  const { fallback } = plan;
  const guide = plan.powerLossGuide.map(note);
  // What the guide below says does not stand among the remarks as well.
  const remarks = [...plan.driven.notes, ...plan.notes, ...endurance.notes]
    .map((one) => ({ text: note(one), group: remarkGroupOf(one) }))
    .filter(({ text }) => !guide.includes(text));
  return (
    <div className={styles.more}>
      <section>
        <h2>{said.endurance}</h2>
        <FactList
          facts={[
            {
              name: said.perPull,
              value: asked(
                said.perPull,
                show.quantity(endurance.perPull, 'smallVolume'),
                endurance.explanation,
              ),
              small: endurance.isLogged ? said.fromLog : said.fromPlan,
            },
            {
              name: said.perMinute,
              value: asked(
                said.perMinute,
                show.quantity(endurance.perMinute, 'smallVolume'),
                endurance.explanation,
              ),
            },
            { name: said.pullsPerTank, value: tank(said.pullsPerTank, endurance.pullsPerTank) },
            { name: said.minutesPerTank, value: tank(said.minutesPerTank, endurance.minutesPerTank) },
            { name: said.reserve, value: tank(said.reserve, endurance.pullsInReserve) },
            ...(endurance.usedOverPlanned === null || endurance.refillExplanation === null
              ? []
              : [
                  {
                    name: said.refills,
                    value: asked(
                      said.refills,
                      show.difference(endurance.usedOverPlanned - 1, 'share', 0),
                      endurance.refillExplanation,
                    ),
                  },
                ]),
          ]}
        />
      </section>
      <section>
        <h2>{said.fallback}</h2>
        <FactList
          facts={[
            {
              name: said.fallbackBoost,
              value:
                fallback.boost === null
                  ? screens.shell.unknown
                  : asked(said.fallbackBoost, show.quantity(fallback.boost, 'boost'), fallback.explanation),
            },
            { name: said.fallbackWithin, value: show.quantity(fallback.actWithin, 'time', 1) },
          ]}
        />
        {fallback.notes.map((n) => (
          <p key={n.code}>{note(n)}</p>
        ))}
      </section>
      <section className={styles.wide}>
        <div className={styles.head}>
          <h2>{said.guard}</h2>
          <Button
            look="plain"
            onPress={() => saveFile('guard-band.csv', guardCsv(plan.guardBand), 'text/csv')}
          >
            <Download aria-hidden />
            {said.guardSave}
          </Button>
        </div>
        <p className={styles.soft}>{said.guardWhy}</p>
        <FactList
          facts={[
            {
              name: said.guardFlowHalf,
              value: asked(said.guardFlowHalf, share(half.flow), why('injection/guard-band')),
            },
            {
              name: said.guardPressureHalf,
              value: asked(said.guardPressureHalf, share(half.pressure), why('injection/guard-pressure')),
            },
          ]}
        />
        <GuardTable
          rows={plan.guardBand}
          flow={why('injection/guard-band')}
          pressure={why('injection/guard-pressure')}
        />
      </section>
      {remarkGroups.map((group) => (
        <Remarks
          key={group}
          title={said.remarks[group]}
          texts={remarks.filter((remark) => remark.group === group).map(({ text }) => text)}
        />
      ))}
      <Remarks title={said.loss} texts={guide} />
    </div>
  );
}

function Remarks({ title, texts }: { title: string; texts: readonly string[] }) {
  if (texts.length === 0) return null;
  return (
    <section className={styles.wide}>
      <h2>{title}</h2>
      <ul className={styles.remarks}>
        {texts.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </section>
  );
}
