import { explainVerdict } from '../../core/compare/index.ts';
import type { VerdictWire } from '../../core/contract/index.ts';
import type { Show } from '../../core/words/index.ts';
import { type CardValue, type Origin, originOfCard } from './origin.ts';

export type VerdictCard = keyof typeof explainVerdict;

/** Where a number of a verdict comes from, with what stood in its formula this time. */
export function verdictOrigin(card: VerdictCard, verdict: VerdictWire, show: Show): Origin {
  return originOfCard(explainVerdict[card], show, valuesOf(verdict, show)[card] ?? []);
}

function valuesOf(verdict: VerdictWire, show: Show): { readonly [C in VerdictCard]?: readonly CardValue[] } {
  const { meanBefore, effect, interval95, repeatability, band_rad_s, morePulls } = verdict;
  const value = (symbol: string, text: string | null | undefined): CardValue[] =>
    text ? [{ symbol, text }] : [];
  const rpm = (speed: number) => show.quantity(speed, 'engineSpeed');
  const before = value('before', meanBefore === null ? null : show.quantity(meanBefore, 'power'));
  const after = value(
    'after',
    meanBefore === null || effect === null ? null : show.quantity(meanBefore + effect, 'power'),
  );
  const counts = [
    ...value('n_before', show.number(verdict.pullsBefore)),
    ...value('n_after', show.number(verdict.pullsAfter)),
  ];
  const band = value('band', band_rad_s && `${rpm(band_rad_s[0])} – ${rpm(band_rad_s[1])}`);
  const scatter = [
    ...value(
      'sigma',
      repeatability && meanBefore !== null
        ? show.quantity(repeatability.deviation / meanBefore, 'share', 2)
        : null,
    ),
    ...value('nu', repeatability && show.number(repeatability.degrees, 1)),
  ];
  const seen = value('effect', effect === null ? null : show.difference(effect, 'power'));
  const interval = value(
    'F = 0.025, F = 0.975',
    interval95?.map((end) => show.difference(end, 'power')).join(', '),
  );
  const margin = value('margin', show.quantity(verdict.margin, 'share'));
  return {
    effect: [...before, ...after, ...counts, ...band],
    interval95: [...seen, ...interval, ...scatter, ...counts],
    repeatability: [...scatter, ...before],
    smallestSeen: [...scatter, ...counts],
    equivalent: [...margin, ...interval, ...before],
    curve: [...band, ...counts],
    morePulls: [...seen, ...scatter, ...value('k', morePulls === null ? null : show.number(morePulls))],
  };
}
