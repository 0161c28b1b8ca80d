import type { Answers } from './answers.ts';
import { type FitFacts, type FitRuleId, fitRules, type Hazard, type Rule } from './rules.ts';

/** `not-here`: the user says that the car has no such part. Nothing else counts as passed but a pass. */
export type FitState = 'passed' | 'fix' | 'unanswered' | 'not-here';

export type FitItem = {
  readonly id: FitRuleId;
  readonly hazard: Hazard;
  readonly weight: number;
  readonly state: FitState;
  readonly decidedBy: 'setup' | 'answer' | null;
};

export type FitReview = {
  /** All rules that apply, heaviest first. */
  readonly items: readonly FitItem[];
  /** Broken or unanswered with a weight of 6 and more, heaviest first: fix before driving. */
  readonly beforeDriving: readonly FitItem[];
  /** Broken or unanswered below that. */
  readonly soon: readonly FitItem[];
};

/** From this weight on nobody drives before it is fixed (common practice). */
export const fixBeforeDrivingFrom = 6;

function stateOf(rule: Rule, facts: FitFacts, answers: Answers): Pick<FitItem, 'state' | 'decidedBy'> {
  const told = rule.fromSetup?.(facts) ?? null;
  if (told === false) return { state: 'fix', decidedBy: 'setup' };
  const answer = answers[rule.id];
  if (answer === 'no') return { state: 'fix', decidedBy: 'answer' };
  if (told === true) return { state: 'passed', decidedBy: 'setup' };
  if (answer === 'yes') return { state: 'passed', decidedBy: 'answer' };
  if (answer === 'not-here' && rule.canBeAbsent !== false) return { state: 'not-here', decidedBy: 'answer' };
  return { state: 'unanswered', decidedBy: null };
}

/**
 * The fit review: every rule that applies, with what is known of it. Unanswered is not passed, and a rule is never
 * passed over the user's own no.
 */
export function reviewFit(facts: FitFacts, answers: Answers): FitReview {
  const rules: readonly (Rule & { id: FitRuleId })[] = fitRules;
  const items = rules
    .filter((rule) => rule.applies(facts))
    .map((rule) => ({
      id: rule.id,
      hazard: rule.hazard,
      weight: rule.weight,
      ...stateOf(rule, facts, answers),
    }))
    .sort((a, b) => b.weight - a.weight);
  const open = items.filter((i) => i.state === 'fix' || i.state === 'unanswered');
  // Known faults before open questions of the same weight.
  const ordered = [...open].sort(
    (a, b) => b.weight - a.weight || Number(b.state === 'fix') - Number(a.state === 'fix'),
  );
  return {
    items,
    beforeDriving: ordered.filter((i) => i.weight >= fixBeforeDrivingFrom),
    soon: ordered.filter((i) => i.weight < fixBeforeDrivingFrom),
  };
}
