import { useShow } from '../app/view.tsx';
import { Headline } from '../bench/Headline.tsx';
import { Button } from '../components/Button.tsx';
import { Caution } from '../components/Caution.tsx';
import { FactList } from '../components/FactList.tsx';
import { SideSheet } from '../components/SideSheet.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from '../ladder/LadderScreen.module.css';
import { CantYet } from '../plan/CantYet.tsx';
import { type Sheet, useSheet } from '../sheets/use-sheet.ts';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import { ArrivedSection } from './ArrivedSection.tsx';
import { MixtureTable } from './MixtureTable.tsx';
import { type MixtureNow, useMixture } from './use-mixture.ts';

/** What the alcohol does to the mixture: what the control does by itself, what the gauge shows, where the target may go. */
export function MixtureScreen() {
  const sheet = useSheet();
  return sheet ? <MixtureOf sheet={sheet} /> : null;
}

function MixtureOf({ sheet }: { sheet: Sheet }) {
  const { screens, note } = useWords();
  const found = useMixture(sheet.doc);
  const said = screens.mixture;
  if (!found.ok)
    return (
      <main className={styles.main} id="main" tabIndex={-1}>
        <CantYet title={said.cantYet} problems={found.problems} />
      </main>
    );
  const { mixture } = found.value;
  const [does, ...rest] = mixture.plan.notes;
  const chased = rest.find((n) => n.code === 'mixture/chased-trim-leans');
  const gauge = rest.find((n) => n.code === 'mixture/gauge-on-petrol-scale');
  // The caution stands beside the decision, not among the remarks.
  const remarks = [
    ...rest.filter((n) => n !== gauge && n !== chased && n.code !== 'mixture/lean-breaks-engines'),
    ...mixture.notes,
  ];
  const limit = sheet.doc.limits.injectorDuty_percent / 100;
  return (
    <>
      <main className={styles.main} id="main" tabIndex={-1}>
        <div className={styles.body}>
          <Headline
            parts={does ? [{ text: note(does) }] : []}
            second={[chased, gauge].flatMap((n) => (n ? [note(n)] : [])).join(' ')}
          />
          <section>
            <h2>{said.over}</h2>
            <MixtureTable now={found.value} dutyLimit={limit} />
          </section>
          <ArrivedSection now={found.value} />
          <section>
            <h2>{said.remarks}</h2>
            <ul className={styles.remarks}>
              {remarks.map((n) => {
                const text = note(n);
                return <li key={text}>{text}</li>;
              })}
            </ul>
          </section>
        </div>
      </main>
      <TargetSheet now={found.value} leanest={sheet.doc.limits.leanestLambda} />
    </>
  );
}

/** Where the target may go, what staying costs, and what that can break. */
function TargetSheet({ now, leanest }: { now: MixtureNow; leanest: number }) {
  const { screens, show, note } = useWords();
  const showView = useShow();
  const said = screens.mixture;
  const { rows, explanations } = now.mixture.plan;
  const peak = rows[rows.length - 1];
  if (!peak) return null;
  const explained = (id: string) => explanations.find((e) => e.id === id);
  const isShifted = peak.shift > 0.005;
  const duty = now.duty[now.duty.length - 1] ?? null;
  const lambda = (value: number) => show.quantity(value, 'lambda', 2);
  return (
    <SideSheet
      label={said.title}
      kicker={said.title}
      title={isShifted ? said.goals.lean : said.goals.hold}
      why={isShifted ? said.goalWhy(lambda(peak.target - peak.shift), lambda(peak.target)) : said.holdWhy}
    >
      <FactList
        facts={[
          {
            name: said.atPeak,
            value: (
              <WhereFrom
                value={show.quantity(peak.demand.alcoholShare, 'share')}
                what={said.atPeak}
                explanation={explained('mixture/blend')}
              />
            ),
          },
          {
            name: said.cost,
            value: (
              <WhereFrom
                value={said.between(
                  show.bare(peak.cost.low, 'share'),
                  show.quantity(peak.cost.high, 'share'),
                )}
                what={said.cost}
                explanation={explained('mixture/lambda-cost')}
              />
            ),
          },
          {
            name: said.injectors,
            value:
              duty === null ? (
                screens.shell.unknown
              ) : (
                <WhereFrom
                  value={show.quantity(duty, 'share', 0)}
                  what={said.injectors}
                  explanation={now.dutyExplained ?? undefined}
                />
              ),
          },
        ]}
      />
      <Caution>{note({ code: 'mixture/lean-breaks-engines', facts: { leanest } })}</Caution>
      <Button look="main" isWide onPress={() => showView({ planSheet: 'ladder' })}>
        {said.openLadder}
      </Button>
    </SideSheet>
  );
}
