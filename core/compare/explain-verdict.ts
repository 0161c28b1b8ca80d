import type { FormulaCard } from '../power/index.ts';
import { nuisancePriors } from './levels/nuisances.ts';

/** Where each number of a verdict comes from. */
export const explainVerdict = {
  effect: {
    formula: 'ln(after) - ln(before), levels of a mixed model: ln P = setup + sum c z + pull',
    inputs: [
      { symbol: 'P', unit: 'W', name: 'mean wheel power over the band, one per pull' },
      { symbol: 'z', unit: 'of each', name: 'intake temperature, manifold pressure, order, direction' },
      { symbol: 'c', unit: '1 / unit of z', name: 'coefficient, from the pulls and from practice' },
    ],
    source:
      'restricted maximum likelihood: Searle, Casella and McCulloch, Variance Components (1992), ch. 6; stories of the day weighed as in Hoeting et al., Statistical Science 14 (1999) 382',
    validRange: `one gear, one car; practice: ${100 * nuisancePriors.intake.mean} ± ${100 * nuisancePriors.intake.deviation} % per K, drift of ± ${100 * nuisancePriors.drift.deviation} % a pull, on a calm day ± ${100 * nuisancePriors.drift.calm} %, the first pull ± ${100 * nuisancePriors.settling.deviation} %`,
  },
  interval95: {
    formula: 'from F = 0.025 to F = 0.975; F(x) = sum of w N((x - e) / u) over the stories of the day',
    inputs: [
      {
        symbol: 'w',
        unit: '1',
        name: 'chance of a story: which suspects are at work, how calm the day is, how far pulls scatter',
      },
      { symbol: 'e', unit: '1', name: 'effect as that story has it' },
      { symbol: 'u', unit: '1', name: 'standard error: scatter of pulls, nuisances, wandering, weather' },
      { symbol: 'N', unit: '1', name: 'normal distribution function' },
    ],
    source:
      'Hoeting et al., Statistical Science 14 (1999) 382; Box and Tiao, Bayesian Inference in Statistical Analysis (1973), sec. 2.4',
    validRange: 'two pulls a side and up, or one where the session tells how pulls repeat',
  },
  level: {
    formula: 'level = exp(mean of ln P over the pulls) ± t(0.975, nu) u',
    inputs: [
      { symbol: 'P', unit: 'W', name: 'mean wheel power over the band, one per pull' },
      { symbol: 'u', unit: '1', name: 'standard error of the mean: scatter of pulls over their number' },
      { symbol: 'nu', unit: '1', name: 'degrees of freedom of the pooled scatter' },
    ],
    source: 'JCGM 100:2008, 4.2 and G.3',
    validRange: 'no whisker where nothing tells how pulls repeat',
  },
  repeatability: {
    formula: 'scatter = level sigma; sigma^2 = variance of ln P between pulls of one setup',
    inputs: [
      { symbol: 'P', unit: 'W', name: 'mean wheel power over the band, one per pull' },
      { symbol: 'sigma', unit: '1', name: 'standard deviation of one pull, pooled over the entries' },
    ],
    source: 'restricted maximum likelihood: Searle, Casella and McCulloch, Variance Components (1992), ch. 6',
    validRange: 'two pulls or more somewhere in the session, or an earlier day of the same car',
  },
  smallestSeen: {
    formula: 'smallest = delta(nu) u, found as proven in 8 of 10 such days',
    inputs: [
      { symbol: 'u', unit: '1', name: 'standard error: scatter of pulls, nuisances, weather' },
      { symbol: 'delta(nu)', unit: '1', name: 'shift of noncentral t with power 0.8 at 5 %' },
    ],
    source: 'noncentral t; Cohen, Statistical Power Analysis, 2nd ed. (1988), ch. 2',
    validRange: 'with the pulls there are now',
  },
  equivalent: {
    formula: 'F(-margin) and 1 - F(+margin) both under 0.05: two one-sided tests',
    inputs: [{ symbol: 'margin', unit: '1', name: 'share of power that counts as equal' }],
    source: 'Schuirmann, J. Pharmacokinet. Biopharm. 15 (1987) 657',
    validRange: 'comes before gain and loss: the margin is what the user calls equal',
  },
  curve: {
    formula: 'difference ± c u(w); 2 (1 - F(c)) + (L / pi) (1 + c^2 / nu)^(-nu / 2) = 0.05',
    inputs: [
      { symbol: 'L', unit: 'rad', name: 'path length of the standardised residuals along engine speed' },
      { symbol: 'F', unit: '1', name: 'distribution function of t' },
    ],
    source:
      'Sun and Loader, Annals of Statistics 22 (1994) 1328; path length: Telschow and Schwartzman, J. Statist. Plann. Inference 216 (2022) 70',
    validRange: 'the whole true curve lies inside with 95 % confidence; a little wide with few pulls',
  },
  morePulls: {
    formula: 'fewest k with power(effect / u(k)) or power of equivalence of 0.8 and more',
    inputs: [{ symbol: 'u(k)', unit: '1', name: 'standard error with k more pulls on each side' }],
    source:
      'noncentral t; Cohen, Statistical Power Analysis, 2nd ed. (1988), ch. 2; Phillips, J. Pharmacokinet. Biopharm. 18 (1990) 137',
    validRange: 'were the effect truly as large as it looks now',
  },
  witnesses: {
    formula: 'moved: |after - before| beyond its threshold and beyond chance, over the band or a third of it',
    inputs: [{ symbol: 'threshold', unit: 'of the channel', name: 'smallest move that matters' }],
    source: 'common practice',
    validRange: 'each channel with its own threshold',
  },
} as const satisfies Record<string, FormulaCard>;
