import { arrivedOfVerdict } from '../../core/ladder/index.ts';
import { entryBefore } from '../../core/session/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { FactList } from '../components/FactList.tsx';
import { ProblemList } from '../components/ProblemList.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useVerdict } from '../hooks/use-verdict.ts';
import { useWords } from '../hooks/use-words.tsx';
import ladder from '../ladder/LadderScreen.module.css';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import type { MixtureNow } from './use-mixture.ts';

/** The other way round: the fluid that arrived, from the trim that the loop needed once the spray was on. */
export function ArrivedSection({ now }: { now: MixtureNow }) {
  const { screens } = useWords();
  const said = screens.mixture;
  const isLoop = (now.setup.engine.fuelling ?? 'closed-loop') === 'closed-loop';
  return (
    <section>
      <h2>{said.arrived}</h2>
      {isLoop ? <Arrived now={now} /> : <p className={ladder.soft}>{said.noLoop}</p>}
    </section>
  );
}

function Arrived({ now }: { now: MixtureNow }) {
  const { screens, show, note } = useWords();
  const { snapshot } = useSession();
  const said = screens.mixture;
  const session = snapshot?.session ?? null;
  const after =
    session?.ledger.findLast((e) => e.kind === 'spray' && e.state === 'kept' && e.runs.length > 0) ?? null;
  const before = session && after ? entryBefore(session, after.id) : null;
  const { value, problems, isBusy } = useVerdict(before?.id ?? null, after?.id ?? null);
  if (!after || !before) return <p className={ladder.soft}>{said.noSpray}</p>;
  if (problems) return <ProblemList problems={problems} />;
  if (!value) return <p>{isBusy ? screens.ledger.computing : said.noSpray}</p>;
  const arrived = arrivedOfVerdict(value, now.plan, now.model);
  if (!arrived) return <p className={ladder.soft}>{said.noTrim}</p>;
  if (!arrived.ok) return <ProblemList problems={arrived.problems} />;
  const { by, change, found } = arrived.value;
  const perVolume = 1 / now.plan.system.density;
  const asked = (what: string, value: string) => (
    <WhereFrom value={value} what={what} explanation={found.explanation} />
  );
  const half = (found.interval95[1] - found.interval95[0]) / 2;
  return (
    <>
      {found.notes.map((n) => (
        <p key={n.code} className={ladder.told}>
          {note(n)}
        </p>
      ))}
      <div className={ladder.facts}>
        <FactList
          facts={[
            {
              name: by === 'trim' ? said.trimSeen : said.dutySeen,
              value: asked(
                by === 'trim' ? said.trimSeen : said.dutySeen,
                show.differenceWithHalf(change.value, change.half, 'share'),
              ),
            },
            {
              name: said.arrivedFlow,
              value: asked(
                said.arrivedFlow,
                show.withHalf(found.fluidFlow * perVolume, half * perVolume, 'volumeFlow'),
              ),
            },
            ...(found.ratio
              ? [
                  {
                    name: said.ofPlan,
                    value: asked(
                      said.ofPlan,
                      said.between(
                        show.bare(found.ratio.low, 'share', 0),
                        show.quantity(found.ratio.high, 'share', 0),
                      ),
                    ),
                  },
                ]
              : []),
          ]}
        />
      </div>
      <p className={ladder.soft}>{said.arrivedFrom(entryTitle(before, show), entryTitle(after, show))}</p>
    </>
  );
}
