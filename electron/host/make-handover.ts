import { handoverHtml, makeHandover as handoverOf } from '../../core/handover/index.ts';
import {
  type Analyses,
  entryPulls,
  judgeEntries,
  type SessionState,
  sessionLedger,
} from '../../core/session/index.ts';
import type { UnitChoice } from '../../core/units/index.ts';
import { createShow, type Language } from '../../core/words/index.ts';
import { slug } from '../store/index.ts';

/** The customer summary as one HTML file; the same session and date give the same bytes. */
export function makeHandover(
  state: SessionState,
  analyses: Analyses,
  wanted: { readonly language: Language; readonly units: UnitChoice; readonly date: string },
): { fileName: string; html: string } {
  const show = createShow(wanted.language, wanted.units);
  const pulls = entryPulls(state.session, state.runs, analyses);
  const ledger = sessionLedger(state.session, pulls, null);
  const { ladder } = ledger;
  const ends = ladder && { beforeId: ladder.fromId, afterId: ladder.toId };
  const whole = ends && { ...ends, verdict: judgeEntries(state.session, pulls, ends, null) };
  const data = handoverOf(state.session, pulls, ledger, whole, show, wanted.date);
  return {
    fileName: `${wanted.date}-${slug(state.session.name, 'session')}.html`,
    html: handoverHtml(data),
  };
}
