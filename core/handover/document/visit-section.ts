import { convert, degrees, type ShownKind } from '../../units/index.ts';
import type { HandoverFacts } from '../facts/index.ts';
import type { Block, Cell, Column, Row, Section } from './handover-document.ts';
import { mixText } from './settings-section.ts';
import { mixtureDigits, type Teller } from './teller.ts';

type Visit = NonNullable<HandoverFacts['visit']>;
type VisitRow = Visit['conditions'][number] | Visit['settings'][number];

/** How a number of a row is shown; one that is missing here is a word or a bare number. */
const shown: Partial<Record<VisitRow['code'], readonly [ShownKind, number?]>> = {
  mass: ['mass'],
  boost: ['boost'],
  sprayStart: ['boost'],
};

/** This visit beside an earlier one; none where none was named. */
export function visitSection(teller: Teller): Section[] {
  const { facts, words, show } = teller;
  const { visit } = facts;
  if (!visit) return [];
  const said = words.visit;
  const date = show.date(visit.last.createdAt.slice(0, 10));
  const blocks: Block[] = [
    { kind: 'text', text: said.lead(visit.last.name, date), look: 'small' },
    ...(visit.order === 'earlier' ? [] : [{ kind: 'text', text: said.notEarlier, look: 'warn' } as const]),
    sideBySide(visit, teller),
  ];
  if (visit.sparkCells !== null)
    blocks.push({ kind: 'text', text: said.sparkCells(visit.sparkCells), look: 'small' });
  if (visit.obstacles.length > 0) {
    const names = visit.obstacles.map((o) => said.names[o]).join(', ');
    blocks.push({ kind: 'text', text: said.refused(names), look: 'warn' });
  } else blocks.push(...powerBlocks(visit, teller));
  return [{ id: 'visit', title: titleOf(visit, teller), blocks, isKeptWhole: true }];
}

function tyreText(radius_mm: number, { show }: Teller): string {
  return show.units.speed === 'mph'
    ? `${show.number(convert(radius_mm, 'mm', 'in'), 2)}\u00a0in`
    : `${show.number(radius_mm, 1)}\u00a0mm`;
}

function valueText(row: VisitRow, side: 'last' | 'now', teller: Teller): string {
  const { words, show, value } = teller;
  const said = words.visit;
  const it = row[side];
  if (it === null) return words.unknown;
  if (typeof it === 'number') {
    if (row.code === 'spark') return it === 0 ? words.sparkNone : show.difference(degrees(it), 'angle');
    if (row.code === 'tyre') return tyreText(it, teller);
    if (row.code === 'mixture') return value(it, row.unit, 'lambda', mixtureDigits(show)) ?? '';
    if (row.code === 'air') return `${show.number(it, 3)}\u00a0kg/m³`;
    const how = shown[row.code];
    return how ? (value(it, row.unit, how[0], how[1]) ?? '') : show.number(it, 0);
  }
  switch (row.code) {
    case 'basis':
      return it
        .split(', ')
        .map((basis) => said.basisOf[basis] ?? basis)
        .join(', ');
    case 'correction':
      return it === 'none' ? said.noCorrection : it;
    case 'place':
      return it === 'dyno' ? words.dyno : words.road;
    case 'sprayStart':
      return said.sprayOff;
    case 'fluid': {
      const [by = '', methanol, ethanol] = it.split(' ');
      const mix = { methanol_percent: Number(methanol), ethanol_percent: Number(ethanol) };
      return mixText({ ...mix, by: by as keyof typeof words.bases }, teller);
    }
    default:
      return it;
  }
}

/** An earlier visit is the last one; any other is just another. */
function titleOf({ order }: Visit, { words }: Teller): string {
  return order === 'earlier' ? words.visit.title : words.visit.otherTitle;
}

function otherSide({ order }: Visit, { words }: Teller): string {
  return order === 'earlier' ? words.visit.last : words.visit.other;
}

function sideBySide(visit: Visit, teller: Teller): Block {
  const said = teller.words.visit;
  const rows = [...visit.conditions, ...visit.settings].map(
    (row): Row => ({
      cells: [
        { text: said.names[row.code] },
        { text: valueText(row, 'last', teller) },
        { text: valueText(row, 'now', teller) },
        {
          text: said.states[row.state],
          ...(row.state === 'differs' || row.state === 'unknown' ? { tone: 'doubt' as const } : {}),
        },
      ],
    }),
  );
  const columns: Column[] = [
    { title: said.what, width: 'name' },
    { title: otherSide(visit, teller) },
    { title: said.now },
    { title: said.judged },
  ];
  return { kind: 'table', caption: titleOf(visit, teller), columns, rows, scale: null };
}

function powerBlocks(visit: Visit, teller: Teller): Block[] {
  const { power, band_rpm } = visit;
  const { words, show, value } = teller;
  const said = words.visit;
  const level = (side: Visit['power'][number]['now']): Cell => {
    if (!side) return { text: words.notMeasured };
    const half = value(side.half_kW, 'kW', 'power');
    const mean = value(side.mean_kW, 'kW', 'power') ?? '';
    return { text: half === null ? mean : words.massWith(mean, half) };
  };
  const rows = power.map(
    (p): Row => ({
      cells: [
        { text: (visit.order === 'earlier' ? said.powers : said.otherPowers)[p.what] },
        level(p.last),
        level(p.now),
        {
          text:
            p.difference_kW === null
              ? '–'
              : p.differenceHalf_kW === null
                ? show.difference(p.difference_kW * 1e3, 'power')
                : show.differenceWithHalf(p.difference_kW * 1e3, p.differenceHalf_kW * 1e3, 'power'),
        },
      ],
    }),
  );
  const [from, to] = (band_rpm ?? [0, 0]).map(
    (rpm) => value(Math.round(rpm / 10) * 10, 'rpm', 'engineSpeed') ?? '',
  );
  return [
    { kind: 'heading', text: said.powerTitle },
    { kind: 'text', text: said.notProven, look: 'warn' },
    { kind: 'text', text: said.over(from ?? '', to ?? ''), look: 'small' },
    {
      kind: 'table',
      caption: said.powerTitle,
      columns: [
        { title: said.what },
        { title: otherSide(visit, teller), isFigure: true },
        { title: said.now, isFigure: true },
        { title: said.difference, isFigure: true },
      ],
      rows,
      scale: null,
    },
  ];
}
