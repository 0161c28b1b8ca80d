import type { Note, Result } from '../result/index.ts';
import { ok } from '../result/index.ts';
import type { Gate } from './gate.ts';
import type { LadderInput } from './ladder-input.ts';
import { type Ladder, planLadder } from './plan-ladder.ts';
import { isSprayProven, overFeedLoss } from './spray-proven.ts';
import { type ReadEntry, undoes } from './standing.ts';
import type { LadderStep } from './step.ts';

export const nextKinds = [
  'drive-baseline',
  'go-back',
  'stop',
  'wait',
  'more-pulls',
  'drive-again',
  'mend-the-spray',
  'review-fit',
  'make-step',
  'done',
] as const;
export type NextKind = (typeof nextKinds)[number];

/** The one thing to do now, and why. */
export type NextStep = {
  readonly kind: NextKind;
  /** The change to make; null where none is to be made now. */
  readonly step: LadderStep | null;
  /** The entry it is about, or to go back to. */
  readonly entryId: string | null;
  /** Gates of the last entry, gravest first where closed. */
  readonly gates: readonly Gate[];
  /** What to do, in one sentence. */
  readonly now: Note;
  readonly why: readonly Note[];
  /** Stand where the step is decided. */
  readonly cautions: readonly Note[];
  readonly ladder: Ladder;
};

/** More pulls than this on each side are not driven: the effect is then as good as nothing (common practice). */
const mostMorePulls = 4;

/**
 * The one thing to do now: what the last entry's gates ask, then what its verdict asks, then the next step of the
 * ladder.
 *
 * Errors: those of planLadder.
 */
export function nextStep(input: LadderInput): Result<NextStep> {
  const planned = planLadder(input);
  if (!planned.ok) return planned;
  return ok(nextOf(planned.value));
}

/** The same, from a ladder that is at hand. */
export function nextOf(ladder: Ladder): NextStep {
  const { standing, routine } = ladder;
  const { last, lastGood, baseline } = standing;
  const gates = last ? last.gates : [];
  const answer = (
    kind: NextKind,
    now: Note,
    more: Partial<Pick<NextStep, 'step' | 'entryId' | 'why' | 'cautions'>> = {},
  ): NextStep => ({
    kind,
    step: null,
    entryId: last?.id ?? null,
    why: [],
    cautions: [],
    gates,
    ladder,
    now,
    ...more,
  });
  const first = ladder.steps[0] ?? null;
  if (!baseline || !last || baseline.measured.pulls === 0)
    return answer(
      'drive-baseline',
      { code: 'ladder/now-baseline', facts: { pulls: routine.pulls } },
      { step: first?.kind === 'baseline' ? first : null, cautions: first?.cautions ?? [] },
    );
  const gravest = last.state === 'kept' ? last.closed[0] : undefined;
  if (gravest && undoes(gravest)) {
    const why = last.closed.map(gateNote);
    const goesBack =
      last.kind !== 'baseline' &&
      (gravest.ifClosed === 'back-to-last-good' || gravest.ifClosed === 'stop-then-half-step');
    if (goesBack)
      return answer(
        'go-back',
        {
          code: 'ladder/now-go-back',
          facts: { action: gravest.ifClosed, toBaseline: lastGood?.kind === 'baseline' },
        },
        { entryId: lastGood?.id ?? null, why, cautions: [{ code: 'ladder/do-not-press-on', facts: {} }] },
      );
    return answer(
      'stop',
      { code: 'ladder/now-stop', facts: { action: gravest.ifClosed } },
      { why, cautions: [{ code: 'ladder/do-not-press-on', facts: {} }] },
    );
  }
  if (gravest && (gravest.ifClosed === 'cool-down' || gravest.ifClosed === 'refill'))
    return answer(
      'wait',
      { code: 'ladder/now-wait', facts: { action: gravest.ifClosed, coolDown: routine.coolDown } },
      { why: last.closed.map(gateNote) },
    );
  const asked = verdictAsks(last, ladder);
  // A gate that holds boost does not undo the entry, but whoever drives it again has to know.
  if (asked) {
    const why = [...(last.state === 'kept' ? last.closed.map(gateNote) : []), ...(asked.why ?? [])];
    return answer(asked.kind, asked.now, { ...asked, why });
  }
  // The baseline is driven without the spray; before the spray goes on, its fit has to be sound.
  const openFit = ladder.plan.fit.beforeDriving.length;
  if (first?.kind === 'spray' && openFit > 0)
    return answer(
      'review-fit',
      { code: 'ladder/now-fit', facts: { count: openFit } },
      { why: first.reasons, cautions: first.cautions.filter((c) => c.code !== 'ladder/fit-open') },
    );
  if (first)
    return answer('make-step', { code: `ladder/now-${first.kind}`, facts: stepFacts(first) } as Note, {
      step: first,
      why: [...first.reasons, ...last.closed.map(gateNote)],
      cautions: first.cautions,
      entryId: last.id,
    });
  return answer('done', { code: 'ladder/now-done', facts: {} }, { why: ladder.notes.filter(isEnd) });
}

function isEnd(note: Note): boolean {
  return (
    note.code === 'ladder/boost-ends' ||
    note.code.startsWith('ladder/spark-') ||
    note.code === 'ladder/no-spark-left'
  );
}

function stepFacts(step: LadderStep): { from: number | null; to: number | null } {
  return { from: step.from, to: step.to };
}

/** What a gate says, as a sentence with its numbers. */
export function gateNote(gate: Gate): Note {
  return {
    code: 'ladder/gate',
    facts: {
      quantity: gate.quantity,
      kind: gate.kind,
      limit: gate.limit,
      isLowest: gate.isLowest,
      measured: gate.measured,
      predicted: gate.predicted,
      closeness: gate.closeness,
      state: gate.state,
    },
  };
}

type Asked = { kind: NextKind; now: Note; why?: readonly Note[]; entryId?: string | null };

function verdictAsks(last: ReadEntry, ladder: Ladder): Asked | null {
  const { verdict } = last;
  if (last.kind === 'baseline' || last.state === 'dropped') return null;
  if (last.measured.pulls === 0 || !verdict)
    return { kind: 'more-pulls', now: { code: 'ladder/now-drive', facts: { pulls: ladder.routine.pulls } } };
  if (verdict.kind === 'not-comparable')
    return { kind: 'drive-again', now: { code: 'ladder/now-drive-again', facts: {} } };
  if (verdict.kind === 'undecided' && verdict.morePulls !== null && verdict.morePulls <= mostMorePulls)
    return { kind: 'more-pulls', now: { code: 'ladder/now-more-pulls', facts: { more: verdict.morePulls } } };
  if (last.kind === 'spray' && !isSprayProven(ladder.standing))
    return {
      kind: 'mend-the-spray',
      now: {
        code: 'ladder/now-mend-the-spray',
        facts: { loss: -(verdict.effectShare ?? 0), allowed: overFeedLoss },
      },
      why: ladder.plan.powerLossGuide,
    };
  if (verdict.kind === 'loss' && last.kind !== 'nothing' && last.kind !== 'spray')
    return {
      kind: 'go-back',
      now: { code: 'ladder/now-loss', facts: { loss: -(verdict.effectShare ?? 0) } },
      entryId: ladder.standing.lastGood?.id ?? null,
    };
  return null;
}
