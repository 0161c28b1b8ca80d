import { describe, expect, it } from 'vitest';
import { fitRules } from '../../../core/fit/index.ts';
import {
  closedGates,
  type GateContext,
  gateNote,
  gatesOf,
  type LadderEntry,
  ladderLimits,
  type Measured,
  measuredOf,
  nextOf,
  nothingMeasured,
  planLadder,
} from '../../../core/ladder/index.ts';
import { unwrap } from '../../../core/result/index.ts';
import { celsius, metricUnits } from '../../../core/units/index.ts';
import { createShow, noteText } from '../../../core/words/index.ts';
import { driven, entry, sampleLadder, sampleLimits, sound, sprayed, verdict } from '../../support/ladder.ts';

const context: GateContext = {
  limits: ladderLimits(sampleLimits),
  ambientTemperature: celsius(12),
  ambientPressure: 100.6e3,
  mapSensor: 300e3,
  fuelPump: 0.036,
  isSprayOn: true,
  plannedFlow: 2.5e-6,
  reserveShare: 0.2,
};

describe('gatesOf', () => {
  it('is open everywhere for sound pulls, and says how close each came', () => {
    const gates = gatesOf({ ...sprayed, fluidLevel: 0.8, fuelFlow: 0.02 }, context);
    expect(gates.map((g) => g.state).every((s) => s === 'open' || s === 'near')).toBe(true);
    expect(gates).toHaveLength(12);
    for (const gate of gates) expect(gate.closeness).toBeGreaterThanOrEqual(0);
  });
  const closing: readonly [string, Partial<Measured>, string][] = [
    ['knock', { knockEvents: 1 }, 'stop-then-half-step'],
    ['knock', { knockEvents: 2 }, 'back-to-last-good'],
    ['lambda', { leanestLambda: 0.91 }, 'stop-and-check-fuel'],
    ['fluidPressure', { lowestFluidPressure: 400e3 }, 'stop-and-check-fluid'],
    ['fluidFlow', { fluidFlow: 1.5e-6 }, 'stop-and-check-fluid'],
    ['fuelPressure', { fuelPressureHeld: 0.9 }, 'stop-and-check-fuel'],
    ['exhaust', { hottestExhaust: celsius(960) }, 'richer-or-less-spark'],
    ['injectorDuty', { injectorDuty: 0.86 }, 'hold-boost'],
    ['injectorDuty', { injectorDuty: 0.91 }, 'back-to-last-good'],
    ['mapSensor', { manifoldPressure: 286e3 }, 'hold-boost'],
    ['boostCeiling', { boost: 121e3 }, 'hold-boost'],
    ['fuelPump', { fuelFlow: 0.034 }, 'hold-boost'],
    ['intake', { hottestIntake: celsius(61) }, 'cool-down'],
    ['fluidLeft', { fluidLevel: 0.1 }, 'refill'],
  ];
  it.each(closing)('%s closes at %o and asks: %s', (quantity, measured, action) => {
    const closed = closedGates(gatesOf({ ...sprayed, ...measured }, context));
    expect(closed.map((g) => g.quantity)).toEqual([quantity]);
    expect(closed[0]?.ifClosed).toBe(action);
    expect(closed[0]?.closeness).toBeGreaterThanOrEqual(1);
  });
  it('keeps a gate without a channel as unmeasured: unseen is not passed', () => {
    const gates = gatesOf(nothingMeasured, context);
    expect(new Set(gates.map((g) => g.state))).toEqual(new Set(['unmeasured']));
  });
  it('asks nothing of the spray while it is off', () => {
    const quantities = gatesOf(sound, { ...context, isSprayOn: false }).map((g) => g.quantity);
    expect(quantities.some((q) => q.startsWith('fluid'))).toBe(false);
  });
  it('reads as a sentence with its numbers in both languages', () => {
    const [knock] = gatesOf({ ...sprayed, knockEvents: 2 }, context);
    if (!knock) throw new Error('knock is always a gate');
    expect(noteText(gateNote(knock), createShow('en', metricUnits))).toContain('closed');
    expect(noteText(gateNote(knock), createShow('de', metricUnits))).toContain('geschlossen');
  });
});

describe('measuredOf', () => {
  it('is nothing without pulls', () => {
    expect(measuredOf([])).toEqual(nothingMeasured);
  });
});

describe('the one thing to do now', () => {
  const next = (ledger: readonly LadderEntry[]) => nextOf(unwrap(planLadder(sampleLadder({ ledger }))));
  it('a new session: drive the baseline', () => {
    expect(next([])).toMatchObject({ kind: 'drive-baseline', now: { code: 'ladder/now-baseline' } });
  });
  it('a baseline, the fit review open: finish it before the spray goes on', () => {
    const now = next([driven.baseline]);
    expect([now.kind, now.step]).toEqual(['review-fit', null]);
    const open = now.ladder.plan.fit.beforeDriving.length;
    expect(now.now).toEqual({ code: 'ladder/now-fit', facts: { count: open } });
    for (const language of ['en', 'de'] as const)
      expect(noteText(now.now, createShow(language, metricUnits))).toContain(`${open} `);
  });
  it('a baseline and a fit that is answered: turn the spray on', () => {
    const asked = sampleLadder({ ledger: [driven.baseline] });
    const fit = Object.fromEntries(fitRules.map(({ id }) => [id, 'yes' as const]));
    const now = nextOf(unwrap(planLadder({ ...asked, setup: { ...asked.setup, fit } })));
    expect([now.kind, now.step?.kind]).toEqual(['make-step', 'spray']);
    expect(now.cautions.length).toBeGreaterThan(0);
  });
  it('a proven spray: one step of boost', () => {
    expect(next([driven.baseline, driven.spray])).toMatchObject({ now: { code: 'ladder/now-boost' } });
  });
  it('a step declared and not driven: drive it', () => {
    const open = entry('boost', 'boost', {
      from: 100e3,
      to: 110e3,
      verdict: null,
      measured: nothingMeasured,
    });
    expect(next([driven.baseline, driven.spray, open]).now.code).toBe('ladder/now-drive');
  });
  it('knock: back to the last good entry, before any verdict', () => {
    const bad = { ...driven.boost, measured: { ...driven.boost.measured, knockEvents: 1 } };
    const now = next([driven.baseline, driven.spray, bad]);
    expect([now.kind, now.entryId]).toEqual(['go-back', 'spray']);
    expect(now.cautions.map((n) => n.code)).toContain('ladder/do-not-press-on');
  });
  it('lean: stop, whatever power says', () => {
    const lean = { ...driven.boost, measured: { ...driven.boost.measured, leanestLambda: 0.93 } };
    expect(next([driven.baseline, driven.spray, lean]).kind).toBe('stop');
  });
  it('hot intake: wait', () => {
    const hot = { ...driven.boost, measured: { ...driven.boost.measured, hottestIntake: celsius(65) } };
    expect(next([driven.baseline, driven.spray, hot]).kind).toBe('wait');
  });
  it.each([
    ['undecided', 0.006, 'more-pulls'],
    ['not-comparable', 0.02, 'drive-again'],
    ['loss', -0.02, 'go-back'],
    ['gain', 0.05, 'make-step'],
  ] as const)('verdict %s: %s -> %s', (kind, share, expected) => {
    const boost = { ...driven.boost, verdict: verdict(kind, share) };
    expect(next([driven.baseline, driven.spray, boost]).kind).toBe(expected);
  });
  it('boost over its ceiling is told, whatever the verdict asks', () => {
    const over = {
      ...driven.boost,
      measured: { ...driven.boost.measured, boost: 250e3 },
      verdict: verdict('not-comparable', 0.02),
    };
    const now = next([driven.baseline, driven.spray, over]);
    expect(now.kind).toBe('drive-again');
    expect(now.why[0]).toMatchObject({
      code: 'ladder/gate',
      facts: { quantity: 'boostCeiling', state: 'closed' },
    });
  });
  it('a spray that clearly lost power is mended first, with the guide for this car', () => {
    const overfed = { ...driven.spray, verdict: verdict('loss', -0.05) };
    const now = next([driven.baseline, overfed]);
    expect(now.kind).toBe('mend-the-spray');
    expect(now.why.length).toBeGreaterThan(0);
  });
  it('a spray that cost a little, as expected, goes on', () => {
    const little = { ...driven.spray, verdict: verdict('loss', -0.012) };
    expect(next([driven.baseline, little]).step?.kind).toBe('boost');
  });
  it('the end of the ladder says why it ends', () => {
    const flat = entry('flat', 'spark', { to: 0.01, verdict: verdict('equivalent', 0) });
    const mixture = entry('mixture', 'mixture', { from: 0.82, to: 0.85 });
    const now = next([driven.baseline, driven.spray, driven.boost, flat, mixture]);
    expect(now.kind).toBe('done');
    expect(now.why.length).toBeGreaterThan(0);
  });
});

describe('an earlier entry driven again', () => {
  const { baseline, spray, boost } = driven;
  const again = (repeats: string | null) => entry('again', 'nothing', { repeats, measured: sound });
  const standing = (repeats: string | null) =>
    unwrap(planLadder(sampleLadder({ ledger: [baseline, spray, boost, again(repeats)] }))).standing;
  it('of the baseline is held against the baseline’s gates: no fluid is missed', () => {
    const { last } = standing('baseline');
    expect(last?.gates.map((g) => g.quantity)).not.toContain('fluidFlow');
    expect(last?.closed).toEqual([]);
  });
  it('leaves what is set now, and the way back, alone', () => {
    const { boost: now, isSprayOn, lastGood, sinceReturn } = standing('baseline');
    expect([now, isSprayOn, lastGood?.id, sinceReturn]).toEqual([110e3, true, 'boost', 0]);
  });
});
