import { useRef } from 'react';
import type { CoastDown } from '../../core/contract/index.ts';
import { explainPower } from '../../core/power/index.ts';
import type { RunRecord } from '../../core/session/index.ts';
import { Button } from '../components/Button.tsx';
import { FactList } from '../components/FactList.tsx';
import field from '../components/Field.module.css';
import { ProblemList } from '../components/ProblemList.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import { originOfCard } from '../where-from/origin.ts';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import styles from './CoastDownFit.module.css';

export type FittedLoadProps = {
  readonly answer: CoastDown;
  /** The logs that the rolls are from. */
  readonly runs: readonly Pick<RunRecord, 'id' | 'name'>[];
  readonly sheet: Sheet;
  /** A newer fit is on its way: what is shown must not be taken. */
  readonly isBusy: boolean;
};

/** Decimals of the coefficients that leave a good interval two of its own, in either set of units. */
const digits = { force: 2, forcePerSpeed: 3, forcePerSpeedSquared: 5 } as const;

/** The road load that the rolls give, with its intervals and what is to be said of it; taken over with one press. */
export function FittedLoad({ answer, runs, sheet, isBusy }: FittedLoadProps) {
  const { screens, show, note } = useWords();
  const { say } = useToasts();
  const outcome = useRef<HTMLDivElement>(null);
  const said = screens.coastDown;
  const fields = screens.sheet.fields;
  const { fit, problems, rolls } = answer;
  if (problems.length > 0) return <ProblemList problems={problems} />;
  if (!fit) return <p className={field.hint}>{said.noneCounts}</p>;
  const { car } = sheet.doc;
  const { roadLoad, half } = fit;
  const origin = originOfCard(explainPower.coastDown, show, [
    { symbol: 'm', text: show.quantity(car.mass_kg, 'mass') },
    { symbol: 'm + Iw / r^2', text: show.quantity(fit.mass, 'mass') },
    {
      symbol: said.logs,
      text: said.runOption(runs.map((run) => run.name).join(', '), said.rollCount(fit.rolls)),
    },
  ]);
  const fact = (name: string, value: string) => ({
    name,
    value: <WhereFrom value={value} what={name} origin={origin} />,
  });
  const coefficient = (path: 'a_N' | 'b_N_s_m' | 'c_N_s2_m2', width: number, kind: keyof typeof digits) =>
    fact(fields[`car.roadLoad.${path}`].label, show.withHalf(roadLoad[path], width, kind, digits[kind]));
  const stands = Object.entries(roadLoad).every(
    ([key, value]) => car.roadLoad?.[key as keyof typeof roadLoad] === value,
  );
  const take = () => {
    if (!sheet.put('car.roadLoad', { ...car.roadLoad, ...roadLoad })) return say(screens.sheet.outOfRange);
    say(said.taken);
    // The button goes; what it says instead takes the focus over.
    outcome.current?.focus();
  };
  return (
    <div className={styles.load}>
      <FactList
        facts={[
          coefficient('a_N', half.a, 'force'),
          coefficient('b_N_s_m', half.b, 'forcePerSpeed'),
          coefficient('c_N_s2_m2', half.c, 'forcePerSpeedSquared'),
          ...fit.force.map((at) =>
            fact(
              (at.isRolled ? said.at : said.beyond)(show.quantity(at.speed, 'speed', 0)),
              show.withHalf(at.force, at.half, 'force', digits.force),
            ),
          ),
          fact(
            fields['car.roadLoad.half_percent'].label,
            show.quantity(roadLoad.half_percent / 100, 'share', 2),
          ),
        ]}
      />
      <ul className={styles.notes}>
        {fit.notes.map((n) => (
          <li key={note(n)}>{note(n)}</li>
        ))}
      </ul>
      <div ref={outcome} className={styles.take} role="status" tabIndex={-1}>
        {stands ? (
          <p>{said.stands}</p>
        ) : (
          <Button onPress={take} isDisabled={isBusy || rolls.length === 0}>
            {said.take}
          </Button>
        )}
      </div>
    </div>
  );
}
