import type { Note } from '../../result/index.ts';
import { judgeWithP } from '../judge.ts';
import type { JudgeInput } from '../judge-input.ts';
import { holm, tQuantile } from '../statistics/index.ts';
import type { Verdict } from '../verdict.ts';
import { ladderOf } from './ladder.ts';
import { fitSession, type SessionFit } from './session-fit.ts';
import type { SessionEntry, SessionLine, SessionTable } from './session-table.ts';

/** From this many entries on a drifting day is worth a pull or two (practice: every four or five entries). */
const entriesBeforeAdvice = 4;

/**
 * What each change of a session was worth: every entry against the one it stands on, the ladder from the
 * baseline to the last kept entry, and the day's drift where an earlier entry was driven again.
 *
 * Statements of several lines are adjusted by Holm, so that all of them together err in one session of twenty.
 * Levels, ladder and drift come from one fit over the band that all entries share; each verdict from the wider
 * band that its own two entries share.
 *
 * @param entries  in the order of the ledger; the first is the baseline
 * @param options  as for judge: margin, band, prior
 */
export function judgeSession(
  entries: readonly SessionEntry[],
  options: Pick<JudgeInput, 'margin' | 'band_rad_s' | 'prior'> = {},
): SessionTable {
  const byId = new Map(entries.map((e) => [e.id, e]));
  const judged = entries.map((entry) => {
    const against = entry.against === null ? undefined : byId.get(entry.against);
    if (!against || entry.pulls.length === 0 || against.pulls.length === 0) return { verdict: null, p: null };
    return judgeWithP({
      before: against.pulls,
      after: entry.pulls,
      session: entries,
      declared: entry.declared,
      ...options,
    });
  });
  const stating = judged.map(({ verdict, p }) => (verdict && p !== null && isStatement(verdict) ? p : null));
  const adjusted = adjust(stating);
  const fit = fitSession(entries, options);
  // What a later session may lean on is what this day's pulls told, nothing handed on from before.
  const own = (options.prior ? fitSession(entries, { ...options, prior: null }) : fit)?.day ?? null;
  const lines = entries.map((entry, i): SessionLine => {
    const adjustedP = adjusted[i] ?? null;
    return {
      entryId: entry.id,
      againstId: entry.against,
      pulls: fit?.pullsOf(entry.id) ?? 0,
      level: fit ? levelOf(fit, entry.id) : null,
      verdict: judged[i]?.verdict ?? null,
      adjustedP,
      standsAdjusted: adjustedP !== null && adjustedP < 0.05,
    };
  });
  const hasRepeat = entries.some((e) => e.repeats !== null && e.pulls.length > 0);
  const driven = entries.filter((e) => e.pulls.length > 0).length;
  const notes: Note[] =
    !hasRepeat && driven >= entriesBeforeAdvice
      ? [{ code: 'compare/drive-again', facts: { entries: driven } }]
      : [];
  const refused = new Set(lines.filter((l) => l.verdict?.kind === 'not-comparable').map((l) => l.entryId));
  return {
    lines,
    ladder: fit && ladderOf(entries, fit, refused),
    drift: hasRepeat && fit ? driftOf(fit) : null,
    repeatability: own && { deviationShare: Math.sqrt(own.variance), degrees: own.degrees },
    notes,
  };
}

function isStatement(verdict: Verdict): boolean {
  return (
    verdict.kind === 'gain' ||
    verdict.kind === 'loss' ||
    verdict.kind === 'equivalent' ||
    verdict.kind === 'undecided'
  );
}

/** Holm over those that state something, in their places. */
function adjust(p: readonly (number | null)[]): (number | null)[] {
  const places = p.flatMap((value, i) => (value === null ? [] : [i]));
  const values = holm(places.map((i) => p[i] as number));
  return p.map((_, i) => {
    const at = places.indexOf(i);
    return at < 0 ? null : (values[at] ?? null);
  });
}

function levelOf(fit: SessionFit, entryId: string): SessionLine['level'] {
  const n = fit.pullsOf(entryId);
  const mean = fit.meanOf(entryId);
  if (n === 0 || mean === null) return null;
  const half = fit.day ? mean * tQuantile(0.975, fit.day.degrees) * Math.sqrt(fit.day.variance / n) : null;
  return { mean, half };
}

function driftOf(fit: SessionFit): SessionTable['drift'] {
  const told = fit.day?.suspect('drift');
  if (!fit.day || !told) return null;
  const half = tQuantile(0.975, fit.day.degrees) * told.deviation;
  return { perPull: told.coefficient, interval95: [told.coefficient - half, told.coefficient + half] };
}
