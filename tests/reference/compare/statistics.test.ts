import { describe, expect, it } from 'vitest';
import {
  chiSquareQuantile,
  detectableShift,
  equivalence,
  fQuantile,
  holm,
  interval,
  mean,
  normalQuantile,
  observationsNeeded,
  pooledVariance,
  powerOfT,
  satterthwaite,
  squaresAboutMean,
  student,
  tQuantile,
  tTest,
  variance,
  welch,
} from '../../../core/compare/statistics/index.ts';
import { checkValue, checkValuesWhere, expectWithin } from '../../support/check-values.ts';
import { expectKnownDeviation } from '../../support/known-deviation.ts';

type Numbers = Record<string, number>;

/** Each key of an entry's expected values against ours, to the entry's own tolerance. */
function expectAll(id: string, actual: Numbers) {
  const entry = checkValue(id);
  const expected = entry.expected as Numbers;
  for (const key of Object.keys(actual)) {
    const tolerance =
      typeof entry.tolerance === 'number' ? entry.tolerance : (entry.tolerance as Numbers)[key];
    expectWithin(actual[key] as number, {
      expected: expected[key] as number,
      tolerance: tolerance as number,
      source: entry.source,
      id: `${id} ${key}`,
    });
  }
}

describe('quantiles stand as in the printed tables', () => {
  it.each(checkValuesWhere((v) => /^t9\d+-/.test(v.id), 19))('$id', (entry) => {
    const p = entry.id.startsWith('t975') ? 0.975 : 0.95;
    expectWithin(tQuantile(p, entry.inputs.df as number), {
      ...entry,
      expected: entry.expected as number,
      tolerance: entry.tolerance as number,
    });
  });

  it.each(checkValuesWhere((v) => v.id.startsWith('f95-'), 3))('$id', (entry) => {
    expectWithin(fQuantile(0.95, entry.inputs.df as [number, number]), {
      ...entry,
      expected: entry.expected as number,
      tolerance: entry.tolerance as number,
    });
  });

  it('normal 0.975 and chi-square 0.95 with 10 degrees (NIST/SEMATECH e-Handbook, 1.3.6.7)', () => {
    expect(normalQuantile(0.975)).toBeCloseTo(1.95996, 5);
    expect(chiSquareQuantile(0.95, 10)).toBeCloseTo(18.307, 3);
  });
});

describe('means and variances keep every digit (NIST StRD)', () => {
  it('Michelso', () => {
    const y = checkValue('nist-michelso').inputs.y as number[];
    expectAll('nist-michelso', { mean: mean(y), sd: Math.sqrt(variance(y)) });
  });

  it('NumAcc1', () => {
    const y = checkValue('nist-numacc1').inputs.y as number[];
    expectAll('nist-numacc1', { mean: mean(y), sd: Math.sqrt(variance(y)) });
  });

  it.each(['nist-numacc2', 'nist-numacc3', 'nist-numacc4'])('%s', (id) => {
    const b = checkValue(id).inputs.b as number;
    const y = Array.from({ length: 1001 }, (_, i) => b + (i === 0 ? 0.2 : i % 2 === 1 ? 0.1 : 0.3));
    expectAll(id, { mean: mean(y), sd: Math.sqrt(variance(y)) });
  });

  it.each(['nist-sirstv', 'nist-atmwtag'])('pooling inside groups: %s', (id) => {
    const groups = checkValue(id).inputs.groups as number[][];
    const all = groups.flat();
    const inside = pooledVariance(groups);
    const within = inside.variance * inside.degrees;
    const between = squaresAboutMean(groups.map(mean)) * (groups[0]?.length ?? 0);
    expectAll(id, {
      residual_sd: Math.sqrt(inside.variance),
      ss_within: within,
      ss_between: between,
      F: between / (groups.length - 1) / inside.variance,
      r_squared: between / squaresAboutMean(all),
    });
  });
});

describe('two samples', () => {
  it('a published Welch example with 15 values a side', () => {
    const { a, b } = checkValue('welch').inputs as { a: number[]; b: number[] };
    const difference = welch(b, a);
    const [low, high] = interval(difference);
    const entry = checkValue('welch').expected as { t: number; df: number; p: number; ci95: number[] };
    expect(tTest(difference).t).toBeCloseTo(entry.t, 9);
    expect(difference.degrees).toBeCloseTo(entry.df, 8);
    expect(tTest(difference).p).toBeCloseTo(entry.p, 9);
    // Interval from SciPy 1.17.1, ttest_ind(equal_var=False).confidence_interval().
    expect(low).toBeCloseTo(-3.984096267140929, 12);
    expect(high).toBeCloseTo(-0.3492370661924069, 12);
    [low, high].forEach((bound, i) => {
      expectKnownDeviation(
        bound,
        { expected: entry.ci95[i] as number, tolerance: 1e-9, source: 'the published Welch interval' },
        { deviation: 1.4e-8, because: 'its t quantile for broken degrees is good to eight digits only' },
      );
    });
  });

  it('a published Welch example with six values a side', () => {
    const { a, b } = checkValue('welch-small').inputs as { a: number[]; b: number[] };
    const { t, p } = tTest(welch(b, a));
    expectAll('welch-small', { t, p });
    // Note of the entry: with one variance for both sides p is 0.07857.
    expect(tTest(student(b, a)).p).toBeCloseTo(0.07857, 5);
  });

  it('Student’s sleep data, two samples and paired (R documentation)', () => {
    const { a, b } = checkValue('welch-sleep').inputs as { a: number[]; b: number[] };
    const two = welch(b, a);
    const differences = a.map((value, i) => value - (b[i] as number));
    const paired = {
      difference: mean(differences),
      standardError: Math.sqrt(variance(differences) / differences.length),
      degrees: differences.length - 1,
    };
    expectAll('welch-sleep', {
      welch_t: tTest(two).t,
      welch_df: two.degrees,
      welch_p: tTest(two).p,
      paired_t: tTest(paired).t,
      paired_df: paired.degrees,
      paired_p: tTest(paired).p,
    });
    const [low, high] = (checkValue('welch-sleep').expected as { welch_ci95: [number, number] }).welch_ci95;
    expect(interval(two)[0]).toBeCloseTo(low, 6);
    expect(interval(two)[1]).toBeCloseTo(high, 6);
  });

  it('AUTO83B from its summary figures (NIST/SEMATECH e-Handbook 1.3.5.3)', () => {
    const { n, mean: means, sd } = checkValue('nist-auto83b').inputs as Record<string, [number, number]>;
    const [na, nb] = n as [number, number];
    const [ma, mb] = means as [number, number];
    const [sa, sb] = sd as [number, number];
    const df = na + nb - 2;
    const pooled = Math.sqrt(((na - 1) * sa ** 2 + (nb - 1) * sb ** 2) / df);
    const sum = satterthwaite([
      { variance: sa ** 2 / na, degrees: na - 1 },
      { variance: sb ** 2 / nb, degrees: nb - 1 },
    ]);
    expectAll('nist-auto83b', {
      pooled_sd: pooled,
      t: (ma - mb) / (pooled * Math.sqrt(1 / na + 1 / nb)),
      df,
      t_critical_975: tQuantile(0.975, df),
      welch_t: (ma - mb) / Math.sqrt(sum.variance),
      welch_df: sum.degrees,
    });
  });

  it('combined degrees of freedom as in the guide to uncertainty, example H.1', () => {
    const { parts_nm, degrees_of_freedom } = checkValue('gum-h1-comparison').inputs as Record<
      string,
      number[]
    >;
    const sum = satterthwaite(
      (parts_nm as number[]).map((u, i) => ({
        variance: u * u,
        degrees: (degrees_of_freedom as number[])[i] as number,
      })),
    );
    expectAll('gum-h1-comparison', { u_nm: Math.sqrt(sum.variance), dof: sum.degrees });
    const whole = checkValue('gum-h1').inputs as {
      components_nm: Numbers;
      degrees_of_freedom: Numbers;
    };
    const total = satterthwaite(
      Object.entries(whole.components_nm).map(([key, u]) => ({
        variance: u * u,
        degrees: whole.degrees_of_freedom[key] as number,
      })),
    );
    const u = Math.sqrt(total.variance);
    expectAll('gum-h1', {
      u_nm: u,
      dof: total.degrees,
      // The guide cuts the degrees to the whole number below.
      U99_nm: tQuantile(0.995, Math.floor(total.degrees)) * u,
    });
  });
});

describe('equivalence', () => {
  it('Wellek’s paired data are equivalent inside 0.8 and 1.25', () => {
    const { test, reference, bounds } = checkValue('tost-wellek').inputs as {
      test: number[];
      reference: number[];
      bounds: [number, number];
    };
    const logs = test.map((value, i) => Math.log(value / (reference[i] as number)));
    const difference = {
      difference: mean(logs),
      standardError: Math.sqrt(variance(logs) / logs.length),
      degrees: logs.length - 1,
    };
    const found = equivalence(difference, [Math.log(bounds[0]), Math.log(bounds[1])]);
    expectAll('tost-wellek', {
      geometric_mean_ratio: Math.exp(difference.difference),
      t_lower: found.tLow,
      p_lower: found.pLow,
      t_upper: found.tHigh,
      p_upper: found.pHigh,
      p_overall: found.p,
    });
    const ci90 = (checkValue('tost-wellek').expected as { ci90: [number, number] }).ci90;
    const tolerance = (checkValue('tost-wellek').tolerance as { ci90: number }).ci90;
    interval(difference, 0.9).forEach((bound, i) => {
      expectWithin(Math.exp(bound), { expected: ci90[i] as number, tolerance, source: 'Wellek (2003)' });
    });
  });

  it('a mean outside the bounds is never equivalent, whatever a looser rule says', () => {
    const { mean: centre, sd, n } = checkValue('tost-one-mean').inputs as Numbers;
    const d = {
      difference: centre as number,
      standardError: (sd as number) / Math.sqrt(n as number),
      degrees: (n as number) - 1,
    };
    const expected = (checkValue('tost-one-mean').expected as { ci90: [number, number] }).ci90;
    interval(d, 0.9).forEach((bound, i) => {
      expectWithin(bound, {
        expected: expected[i] as number,
        tolerance: checkValue('tost-one-mean').tolerance as number,
        source: checkValue('tost-one-mean').source,
      });
    });
    expect(equivalence(d, [8, 9.5]).p).toBeGreaterThan(0.05);
  });
});

describe('Holm', () => {
  it('adjusts as the published examples do, and a tie with the level is no proof', () => {
    const expected = checkValue('holm').expected as number[];
    holm(checkValue('holm').inputs.p as number[]).forEach((p, i) => {
      expect(p).toBeCloseTo(expected[i] as number, 12);
    });
    const published = checkValue('holm-published').expected as { rejected: boolean[]; adjusted: number[] };
    const adjusted = holm(checkValue('holm-published').inputs.p as number[]);
    adjusted.forEach((p, i) => {
      expect(p).toBeCloseTo(published.adjusted[i] as number, 12);
    });
    expect(adjusted.map((p) => p < 0.05)).toEqual(published.rejected);
  });
});

describe('power', () => {
  it.each(checkValuesWhere((v) => /^power-[\d.]+$/.test(v.id), 3))('observations a side: $id', (entry) => {
    expect(observationsNeeded(entry.inputs.difference_over_sd as number)).toBe(entry.expected);
  });

  it('power at 20 a side, one deviation apart (R documentation of power.t.test)', () => {
    expectAll('power-r-documentation', { power_at_20: powerOfT(Math.sqrt(20 / 2), 38) });
  });

  it.each(checkValuesWhere((v) => v.id.startsWith('detectable-'), 6))('$id', (entry) => {
    const n = entry.inputs.runs_a_side as number;
    expectWithin(detectableShift(2 * n - 2) / Math.sqrt(n / 2), {
      ...entry,
      expected: entry.expected as number,
      tolerance: entry.tolerance as number,
    });
  });
});
