import type { EntryPulls, Verdict, verdictKinds } from '../compare/index.ts';
import {
  declaredChange,
  type Entry,
  type LedgerResult,
  type LedgerTable,
  type Session,
} from '../session/index.ts';
import { chosenUnit, fromSi } from '../units/index.ts';
import { entryTitle, handoverPhrases, type Show, verdictSentence } from '../words/index.ts';
import { comparisonChart } from './comparison-chart.ts';
import type { ChangeLine, Fact, Handover } from './handover-data.ts';

const tones: Readonly<Record<(typeof verdictKinds)[number], ChangeLine['tone']>> = {
  gain: 'gain',
  loss: 'loss',
  equivalent: 'even',
  undecided: 'doubt',
  'not-comparable': 'refused',
};

function factsOf(session: Session, pulls: readonly EntryPulls[], show: Show): Fact[] {
  const words = handoverPhrases(show.language);
  const { car, conditions } = session;
  const orUnknown = (value: number | null, text: (v: number) => string) =>
    value === null ? words.unknown : text(value);
  const gears = [...new Set(pulls.flatMap((e) => e.pulls.map((p) => p.gear)))].filter((g) => g !== null);
  const place = { dyno: words.dyno, road: words.road };
  return [
    { label: words.car, value: car.name === '' ? words.unknown : car.name },
    { label: words.mass, value: show.quantity(car.mass_kg, 'mass') },
    { label: words.place, value: conditions.place === null ? words.unknown : place[conditions.place] },
    { label: words.gear, value: gears.length === 0 ? words.unknown : gears.sort().join(', ') },
    {
      label: words.air,
      value: orUnknown(conditions.ambient_C, (v) => show.quantity(v + 273.15, 'temperature')),
    },
    {
      label: words.barometer,
      value: orUnknown(conditions.barometer_kPa, (v) => show.quantity(v * 1e3, 'pressure')),
    },
    {
      label: words.humidity,
      value: orUnknown(conditions.relativeHumidity_percent, (v) => show.quantity(v / 100, 'share', 0)),
    },
    { label: words.correction, value: car.correction === 'none' ? words.noCorrection : car.correction },
  ];
}

function sentenceOf(verdict: Verdict, entry: Entry, show: Show): string {
  return verdictSentence(verdict, declaredChange(entry), show)
    .map((part) => part.text)
    .join('');
}

function changeLine(entry: Entry, number: number, result: LedgerResult, show: Show): ChangeLine {
  const words = handoverPhrases(show.language);
  const { verdict } = result;
  const unit = chosenUnit(show.units, 'power').id;
  const isPlaced =
    verdict?.effect != null && verdict.interval95 !== null && verdict.kind !== 'not-comparable';
  const [low, high] = verdict?.interval95 ?? [0, 0];
  const effect = verdict?.effect ?? 0;
  const level = result.level;
  return {
    number,
    title: entryTitle(entry, show),
    pulls: `${result.pulls}`,
    state: result.pulls === 0 ? 'not-driven' : entry.state,
    effect: isPlaced
      ? show.differenceWithHalf(effect, (high - low) / 2, 'power')
      : number === 0 && level
        ? show.quantity(level.mean, 'power')
        : '',
    sentence: verdict ? sentenceOf(verdict, entry, show) : result.pulls === 0 ? words.notDriven : '',
    note: entry.note,
    whisker: isPlaced
      ? { effect: fromSi(effect, unit), low: fromSi(low, unit), high: fromSi(high, unit) }
      : null,
    tone: verdict ? tones[verdict.kind] : 'none',
  };
}

function scaleOf(lines: readonly ChangeLine[], show: Show): Handover['scale'] {
  const ends = lines.flatMap((l) => (l.whisker ? [l.whisker.low, l.whisker.high] : []));
  if (ends.length === 0) return null;
  return { low: Math.min(0, ...ends), high: Math.max(0, ...ends), unit: show.unit('power') };
}

/**
 * The customer summary of a session, in the customer's language and units. Private notes are never read here.
 *
 * @param ledger  every entry as judged
 * @param whole   the first measurement against the car as left; null where there are not two measured states
 * @param date    printed on it, ISO
 */
export function makeHandover(
  session: Session,
  pulls: readonly EntryPulls[],
  ledger: LedgerTable,
  whole: { readonly verdict: Verdict; readonly beforeId: string; readonly afterId: string } | null,
  show: Show,
  date: string,
): Handover {
  const words = handoverPhrases(show.language);
  const numberOf = (id: string) => session.ledger.findIndex((e) => e.id === id);
  const changes = session.ledger.flatMap((entry, number) => {
    const result = ledger.lines.find((l) => l.entryId === entry.id);
    return result ? [changeLine(entry, number, result, show)] : [];
  });
  return {
    language: show.language,
    title: words.title,
    sessionName: session.name,
    date: show.date(date),
    invented: session.isInvented ? words.invented : null,
    headline: headlineOf(ledger.ladder, show),
    facts: factsOf(session, pulls, show),
    changes,
    scale: scaleOf(changes, show),
    chart: whole?.verdict.curve
      ? comparisonChart(
          whole.verdict.curve,
          {
            before: `${numberOf(whole.beforeId)} · ${words.before}`,
            after: `${numberOf(whole.afterId)} · ${words.after}`,
          },
          show,
        )
      : null,
    notes: session.note,
  };
}

/** What the day brought: the whole way with its interval, as the ladder adds it up. */
function headlineOf(ladder: LedgerTable['ladder'], show: Show): string {
  const words = handoverPhrases(show.language);
  if (!ladder) return words.wholeNone;
  const [low, high] = ladder.interval95;
  return `${words.whole}: ${show.differenceWithHalf(ladder.effect, (high - low) / 2, 'power')}.`;
}
