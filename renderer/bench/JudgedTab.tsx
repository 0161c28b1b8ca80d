import type { VerdictWire } from '../../core/contract/index.ts';
import { type Fact, FactList } from '../components/FactList.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { type VerdictCard, verdictOrigin } from '../where-from/verdict-origin.ts';
import { WhereFrom } from '../where-from/WhereFrom.tsx';
import styles from './JudgedTab.module.css';

/** How the verdict came about: its numbers, each with its origin, and everything the judge remarked. */
export function JudgedTab({ verdict }: { verdict: VerdictWire }) {
  const { screens, show, note } = useWords();
  const said = screens.bench.judged;
  const { effect, interval95, effectShare, repeatability, smallestSeen, band_rad_s, morePulls } = verdict;
  const fact = (name: string, value: string | null, card: VerdictCard | null): Fact[] =>
    value === null
      ? []
      : [
          {
            name,
            value: card ? (
              <WhereFrom value={value} what={name} origin={verdictOrigin(card, verdict, show)} />
            ) : (
              value
            ),
          },
        ];
  const power = (v: number) => show.difference(v, 'power');
  const facts = [
    ...fact(said.effect, effect === null ? null : power(effect), 'effect'),
    ...fact(said.interval, interval95 && said.to(power(interval95[0]), power(interval95[1])), 'interval95'),
    ...fact(said.share, effectShare === null ? null : show.difference(effectShare, 'share'), 'effect'),
    ...fact(said.margin, show.quantity(verdict.margin, 'share'), 'equivalent'),
    ...fact(said.scatter, repeatability && show.quantity(repeatability.deviation, 'power'), 'repeatability'),
    ...fact(
      said.smallest,
      smallestSeen === null ? null : show.quantity(smallestSeen, 'power'),
      'smallestSeen',
    ),
    ...fact(said.more, morePulls === null ? null : show.number(morePulls), 'morePulls'),
    ...fact(
      said.band,
      band_rad_s &&
        said.to(show.bare(band_rad_s[0], 'engineSpeed'), show.quantity(band_rad_s[1], 'engineSpeed')),
      'curve',
    ),
  ];
  // A refusal's reasons stand under the headline already.
  const reasons = verdict.kind === 'not-comparable' ? [] : verdict.reasons;
  const remarks = [...reasons, ...verdict.remarks].map(note);
  return (
    <div className={styles.judged}>
      <FactList facts={facts} />
      {remarks.length > 0 && (
        <section>
          <h2>{said.remarks}</h2>
          <ul>
            {[...new Set(remarks)].map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
