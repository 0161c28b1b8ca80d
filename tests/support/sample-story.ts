import {
  declareChange,
  type EntryPulls,
  evidenceOfPull,
  judge,
  type PullEvidence,
  type Verdict,
} from '../../core/compare/index.ts';
import { findPulls, readLog } from '../../core/log/index.ts';
import { unwrap } from '../../core/result/index.ts';
import { toSi } from '../../core/units/index.ts';
import { recordChapter } from '../../sample-sessions/simulation/recorded.ts';
import type { Chapter } from '../../sample-sessions/simulation/story.ts';
import { sampleCar, sampleConditions, samplePower } from './sample-logs.ts';

/** Every pull of a story's entries as the judge sees it, driven with this seed and read by the program. */
export function storyPulls(chapters: readonly Chapter[], seed: number): EntryPulls[] {
  let order = 0;
  return chapters.map((chapter) => {
    const pulls: PullEvidence[] = [];
    for (const { name, text } of recordChapter(chapter, seed)) {
      const log = unwrap(readLog(new TextEncoder().encode(text), { file: name }));
      for (const pull of findPulls(log, sampleCar).pulls) {
        const context = {
          entryId: chapter.id,
          order,
          conditions: sampleConditions,
          mass_kg: sampleCar.mass_kg,
        };
        pulls.push(evidenceOfPull(log, pull, samplePower(log, pull), context));
        order++;
      }
    }
    return { id: chapter.id, repeats: null, pulls };
  });
}

/** Each later entry judged against the one before it, as declared in the ledger. */
export function storyVerdicts(chapters: readonly Chapter[], session: readonly EntryPulls[]): Verdict[] {
  return chapters.slice(1).map((chapter, i) => {
    const end = (typed: { value: number; unit: string } | null | undefined) =>
      typed ? toSi(typed.value, typed.unit) : null;
    const [from, to] = [end(chapter.change?.from), end(chapter.change?.to)];
    // Spark is written down as a step: `to` without `from` is its size.
    const known = chapter.kind === 'spark' && from === null ? { size: to } : { from, to };
    const kind = chapter.kind === 'baseline' ? 'nothing' : chapter.kind;
    return judge({
      before: session[i]?.pulls ?? [],
      after: session[i + 1]?.pulls ?? [],
      session,
      declared: declareChange(kind, known),
    });
  });
}
