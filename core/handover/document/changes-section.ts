import type { VerdictKind } from '../../compare/index.ts';
import { chosenUnit, fromSi } from '../../units/index.ts';
import { roundTicks } from '../axis.ts';
import type { HandoverFacts } from '../facts/index.ts';
import type { Block, Cell, EffectScale, Row, Section, Tone, Whisker } from './handover-document.ts';
import type { Teller } from './teller.ts';

const tones: Readonly<Record<VerdictKind, Tone>> = {
  gain: 'gain',
  loss: 'loss',
  equivalent: 'even',
  undecided: 'doubt',
  'not-comparable': 'refused',
};
/** So many changes with their remarks stand on one sheet. */
const mostKeptWhole = 8;
type Change = HandoverFacts['changes'][number];

function whiskerOf(effect_kW: number | null, interval: Change['interval95_kW'], teller: Teller) {
  if (effect_kW === null || interval === null) return {};
  const unit = chosenUnit(teller.show.units, 'power').id;
  const shown = (kW: number) => fromSi(kW * 1e3, unit);
  const whisker: Whisker = { effect: shown(effect_kW), low: shown(interval[0]), high: shown(interval[1]) };
  return { whisker };
}

/** `+10.9 ± 1.4 kW`; where the effect is not in the middle of its interval, the interval's ends under it. */
function effectCell(effect_kW: number, interval: readonly [number, number], { show, words }: Teller): Cell {
  const [low, high] = interval;
  const bare = (kW: number) => show.bare(kW * 1e3, 'power');
  // Ends that read otherwise than the ± says, and by more than rounding alone.
  const half = (high - low) / 2;
  const isOffCentre = Math.abs((high + low) / 2 - effect_kW) > 0.1 * half;
  const isSeen = bare(effect_kW - half) !== bare(low) || bare(effect_kW + half) !== bare(high);
  if (!isOffCentre || !isSeen) return { text: show.differenceWithHalf(effect_kW * 1e3, half * 1e3, 'power') };
  const signed = (kW: number) => show.difference(kW * 1e3, 'power');
  return { text: signed(effect_kW), more: [words.intervalOf(signed(low), signed(high))] };
}

function changeRow(change: Change, teller: Teller, isShort: boolean): Row {
  const { words, show, source, titleOf, sentenceOf, value } = teller;
  const entry = source.session.ledger[change.entry];
  const verdict = source.ledger.lines.find((l) => l.entryId === entry?.id)?.verdict ?? null;
  const remarks: string[] = [];
  if (change.pulls === 0) remarks.push(words.notDriven);
  else if (verdict && entry && !isShort) remarks.push(sentenceOf(verdict, entry));
  if (change.note !== '' && !isShort) remarks.push(change.note);
  const tone = change.verdict ? tones[change.verdict] : 'none';
  const effect: Cell =
    change.effect_kW !== null && change.interval95_kW
      ? {
          ...effectCell(change.effect_kW, change.interval95_kW, teller),
          tone,
        }
      : change.effect_kW !== null
        ? { text: show.difference(change.effect_kW * 1e3, 'power'), tone }
        : change.entry === 0 && change.level_kW !== null
          ? { text: words.baselineLevel(value(change.level_kW, 'kW', 'power') ?? '') }
          : { text: change.verdict === 'not-comparable' ? words.notJudged : '–', tone };
  const isDropped = change.state === 'dropped';
  return {
    isDropped,
    remarks,
    cells: [
      { text: `${change.entry}` },
      { text: isDropped ? `${titleOf(change.entry)} (${words.droppedMark})` : titleOf(change.entry) },
      { text: `${change.pulls}` },
      { text: '', tone, ...whiskerOf(change.effect_kW, change.interval95_kW, teller) },
      effect,
    ],
  };
}

/** The common scale of all effects in a table, zero always on it. */
function scaleOf(rows: readonly Row[], { show }: Teller): EffectScale | null {
  const whiskers = rows.flatMap((r) => r.cells.flatMap((c) => c.whisker ?? []));
  if (whiskers.length === 0) return null;
  const low = Math.min(0, ...whiskers.map((w) => w.low));
  const high = Math.max(0, ...whiskers.map((w) => w.high));
  if (high - low < 1e-9) return null;
  const { ticks, digits } = roundTicks(low, high, 4);
  const text = (at: number) => (at === 0 ? show.number(0) : show.signed(at, digits));
  return { low, high, ticks: ticks.map((at) => ({ at, text: text(at) })) };
}

/** What each change was worth, with what still holds when all are judged together. */
export function changesSection(teller: Teller, isShort: boolean): Section {
  const { facts, words } = teller;
  const rows = facts.changes.map((change) => changeRow(change, teller, isShort));
  const blocks: Block[] = [
    {
      kind: 'table',
      caption: words.changes,
      columns: [
        { title: '', width: 'number' },
        { title: words.change },
        { title: words.pulls, isFigure: true, width: 'small' },
        { title: '', width: 'whiskers' },
        { title: words.worth, isFigure: true, width: 'effect' },
      ],
      rows,
      scale: scaleOf(rows, teller),
    },
  ];
  if (facts.hiddenEntries > 0)
    blocks.push({ kind: 'text', text: words.leftOut(facts.hiddenEntries), look: 'small' });
  const stated = facts.changes.filter(
    (c) => c.verdict === 'gain' || c.verdict === 'loss' || c.verdict === 'equivalent',
  );
  if (stated.length > 1) {
    const numbers = (list: readonly Change[]) => list.map((c) => c.entry).join(', ');
    const holding = stated.filter((c) => c.standsAdjusted);
    const failing = stated.filter((c) => !c.standsAdjusted);
    const said = holding.length > 0 ? words.stillHold(numbers(holding)) : words.noneHold;
    const not = holding.length > 0 && failing.length > 0 ? ` ${words.holdNot(numbers(failing))}` : '';
    blocks.push({ kind: 'text', text: said + not, look: 'small' });
  }
  return { id: 'changes', title: words.changes, blocks, isKeptWhole: rows.length <= mostKeptWhole };
}

/** Kinds of change with their share of the whole; they add up to it. */
export function partsSection(teller: Teller): Section | null {
  const { result } = teller.facts;
  const { words } = teller;
  if (!result || result.parts.length < 2) return null;
  const row = (
    name: string,
    entries: string,
    effect: number,
    interval: [number, number],
    isTotal = false,
  ): Row => ({
    isTotal,
    cells: [
      { text: name },
      { text: entries },
      { text: '', ...whiskerOf(effect, interval, teller) },
      effectCell(effect, interval, teller),
    ],
  });
  const rows = [
    ...result.parts.map((p) =>
      row(words.partKinds[p.kind], p.entries.join(', '), p.effect_kW, p.interval95_kW),
    ),
    row(
      words.wholeRow,
      `${result.fromEntry}–${result.toEntry}`,
      result.effect_kW,
      result.interval95_kW,
      true,
    ),
  ];
  const isOpen = result.parts.some((p) => p.kind === 'not-judged');
  return {
    id: 'parts',
    title: words.parts,
    isKeptWhole: true,
    blocks: [
      {
        kind: 'table',
        caption: words.parts,
        columns: [
          { title: words.part },
          { title: words.partEntries, width: 'medium' },
          { title: '', width: 'whiskers' },
          { title: words.worth, isFigure: true, width: 'effect' },
        ],
        rows,
        scale: scaleOf(rows, teller),
      },
      {
        kind: 'text',
        text: isOpen ? `${words.partsBand} ${words.notJudgedWhy}` : words.partsBand,
        look: 'small',
      },
    ],
  };
}

/** What was driven and taken back. */
export function droppedSection(teller: Teller): Section {
  const { facts, words, titleOf, source, sentenceOf } = teller;
  const items = facts.changes
    .filter((c) => c.state === 'dropped')
    .map((c) => {
      const entry = source.session.ledger[c.entry];
      const verdict = source.ledger.lines.find((l) => l.entryId === entry?.id)?.verdict ?? null;
      const said = verdict && entry ? sentenceOf(verdict, entry) : c.pulls === 0 ? words.notDriven : '';
      return [`${c.entry} · ${titleOf(c.entry)}.`, said, c.note].filter((t) => t !== '').join(' ');
    });
  return {
    id: 'dropped',
    title: words.dropped,
    isKeptWhole: true,
    blocks:
      items.length === 0
        ? [{ kind: 'text', text: words.droppedNone }]
        : [
            { kind: 'text', text: words.droppedLead, look: 'small' },
            { kind: 'list', isOrdered: false, items },
          ],
  };
}
