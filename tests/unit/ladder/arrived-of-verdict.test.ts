import { describe, expect, it } from 'vitest';
import { petrolBlend } from '../../../core/fluids/index.ts';
import { planOf } from '../../../core/injection/index.ts';
import { arrivedOfVerdict, chargeModel, type WitnessedVerdict } from '../../../core/ladder/index.ts';
import { blendDemand } from '../../../core/mixture/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { sampleSetup } from '../../support/ladder.ts';

const setup = sampleSetup();
const plan = unwrap(planOf(setup));
const model = unwrap(chargeModel(setup, plan));
const band = [420, 640] as const;

/** Mean of a quantity of the plan over the band, as a verdict means over it. */
function mean(at: (n: number, boost: number) => number): number {
  const found: number[] = [];
  plan.path.engineSpeed_rad_s.forEach((n, i) => {
    if (n >= band[0] && n <= band[1]) found.push(at(n, plan.path.boost[i] ?? 0));
  });
  return found.reduce((a, b) => a + b, 0) / found.length;
}
const fuel = mean(plan.fuel.at);
const planned = mean((n, b) => model.fluidFlow(b, n) * plan.system.density);

/** What a loop on lambda cuts when a share of the planned fluid arrives. */
function cutBy(share: number): number {
  const petrol = unwrap(petrolBlend(setup.engine.ethanol_percent / 100));
  const demand = blendDemand({
    petrol,
    mix: plan.system.mix,
    airFlow: fuel * 0.82 * petrol.stoichiometricAirFuel,
    fluidFlow: share * planned,
    lambda: 0.82,
  });
  return unwrap(demand).alcoholShare;
}

const witness = (quantity: string, before: number, after: number, half: number) => ({
  quantity,
  before,
  after,
  interval95: [after - before - half, after - before + half] as const,
});
const verdictOf = (...witnesses: WitnessedVerdict['witnesses']): WitnessedVerdict => ({
  band_rad_s: band,
  witnesses,
});
const arrived = (verdict: WitnessedVerdict) => {
  const found = arrivedOfVerdict(verdict, plan, model);
  return found ? unwrap(found) : null;
};

describe('the fluid that arrived, from a verdict', () => {
  it.each([0.3, 1, 1.8])('is read back from the trim: %d of the plan', (share) => {
    const cut = cutBy(share);
    const found = arrived(verdictOf(witness('fuelTrimShort', 0.01, (1 - cut) * 1.01 - 1, 0.002)));
    expect(found?.by).toBe('trim');
    expect(found?.found.ratio?.value).toBeCloseTo(share, 2);
    expect(found?.found.ratio?.low).toBeLessThan(share);
    expect(found?.found.ratio?.high).toBeGreaterThan(share);
  });
  it('is read back from the duty where no trim was logged, its dead time taken off', () => {
    const cut = cutBy(1);
    // Open time falls by the cut, the dead time stays.
    const after = 0.05 + (0.8 - 0.05) * (1 - cut);
    const found = arrived(verdictOf(witness('injectorDuty', 0.8, after, 0.002)));
    expect(found?.by).toBe('duty');
    expect(found?.found.ratio?.value).toBeCloseTo(1, 2);
  });
  it('does not take a little more boost for a clogged nozzle', () => {
    const cut = cutBy(1);
    const air = 1.01;
    const after = 0.05 + (0.8 - 0.05) * (1 - cut) * air;
    const duty = witness('injectorDuty', 0.8, after, 0.002);
    const found = arrived(verdictOf(duty, witness('manifoldPressure', 200e3, 202e3, 300)));
    expect(found?.found.ratio?.value).toBeCloseTo(1, 1);
    expect(arrived(verdictOf(duty))?.found.ratio?.value).toBeLessThan(0.8);
  });
  it('trusts the trim over the duty, and multiplies short and long', () => {
    const cut = cutBy(1);
    const found = arrived(
      verdictOf(
        witness('injectorDuty', 0.8, 0.8, 0.002),
        witness('fuelTrimShort', 0, -cut / 2, 0.001),
        witness('fuelTrimLong', 0.02, ((1 - cut) / (1 - cut / 2)) * 1.02 - 1, 0.001),
      ),
    );
    expect(found?.by).toBe('trim');
    expect(found?.found.ratio?.value).toBeCloseTo(1, 2);
  });
  it('takes a lambda that moved for what it is', () => {
    const cut = cutBy(1);
    const trim = witness('fuelTrimShort', 0, -cut + 0.02, 0.001);
    const richer = witness('lambda', 0.82, 0.82 / 1.02, 0.001);
    // Two percent more petrol than lambda would have needed, and lambda richer by as much: the same alcohol.
    expect(arrived(verdictOf(trim, richer))?.found.ratio?.value).toBeCloseTo(1, 1);
  });
  it('calls a nozzle clogged, matched or oversize only where the interval says so', () => {
    const of = (share: number, half: number) =>
      arrived(verdictOf(witness('fuelTrimShort', 0, -cutBy(share), half)))?.found.arrival;
    expect(of(0.2, 0.001)).toBe('clogged');
    expect(of(2.5, 0.001)).toBe('oversize');
    expect(of(0.7, 0.02)).toBe('undecided');
  });
  it('says nothing without trim, duty or a common range', () => {
    expect(arrived(verdictOf(witness('lambda', 0.82, 0.82, 0.01)))).toBeNull();
    expect(arrived({ band_rad_s: null, witnesses: [witness('fuelTrimShort', 0, -0.03, 0.001)] })).toBeNull();
  });
});
