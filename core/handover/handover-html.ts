import { handoverPhrases } from '../words/index.ts';
import { chartSvg } from './chart-svg.ts';
import type {
  Block,
  Cell,
  Column,
  EffectScale,
  Fact,
  HandoverDocument,
  Row,
  Section,
} from './document/index.ts';
import { type Html, html } from './escape.ts';
import { fontFaces, type HandoverFont } from './handover-fonts.ts';
import { footText, handoverStyle } from './handover-style.ts';

type Table = Extract<Block, { kind: 'table' }>;

const whiskerWidth = 180;
/** Room at both ends for a dot that sits on the edge, and for half of a tick's letters. */
const whiskerRoom = 14;

function whiskerX(scale: EffectScale) {
  const span = scale.high - scale.low || 1;
  return (value: number) =>
    Math.round((((value - scale.low) / span) * (whiskerWidth - 2 * whiskerRoom) + whiskerRoom) * 100) / 100;
}

/** An effect on the table's scale; a proven one has a full dot, an open one a hollow one, so grey tells it too. */
function whisker(cell: Cell, scale: EffectScale): Html {
  const x = whiskerX(scale);
  const { whisker: w, tone = 'none' } = cell;
  const mark =
    w &&
    html`<line x1="${x(w.low)}" x2="${x(w.high)}" y1="9" y2="9" class="span ${tone}"/><circle cx="${x(w.effect)}" cy="9" r="4.2" class="dot ${tone}"/>`;
  return html`<svg viewBox="0 0 ${whiskerWidth} 18" class="whisker" aria-hidden="true"><line x1="${x(0)}" x2="${x(0)}" y1="0" y2="18" class="zero"/>${mark ?? false}</svg>`;
}

/** The scale in the table's head. */
function whiskerAxis(scale: EffectScale): Html {
  const x = whiskerX(scale);
  return html`<svg viewBox="0 0 ${whiskerWidth} 18" class="whisker" aria-hidden="true">${scale.ticks.map(
    (t) =>
      html`<text x="${x(t.at)}" y="10" text-anchor="middle">${t.text}</text><line x1="${x(t.at)}" x2="${x(t.at)}" y1="13.5" y2="18" class="tick"/>`,
  )}</svg>`;
}

/** The attribute for those of the names that apply; nothing where none does. */
function classOf(...names: (string | false | undefined)[]): Html {
  const known = names.filter(Boolean).join(' ');
  return { html: known === '' ? '' : ` class="${known}"` };
}

/** The first cell names its row; a bare number is no name, so the one after it does. */
function isHead(at: number, table: Table): boolean {
  return at === 0 || (at === 1 && table.columns[0]?.width === 'number');
}

function isTitle(at: number, table: Table): boolean {
  return isHead(at, table) && table.columns[at]?.width !== 'number';
}

function cellOf(cell: Cell, at: number, table: Table, isDropped: boolean): Html {
  const column = table.columns[at];
  if (column?.width === 'whiskers') return html`<td>${table.scale && whisker(cell, table.scale)}</td>`;
  const attribute = classOf(column?.isFigure && 'figure', cell.tone && `t-${cell.tone}`);
  const title = isDropped && cell.text !== '' ? html`<span class="title">${cell.text}</span>` : cell.text;
  const inner = html`${title}${(cell.more ?? []).map((m) => html`<div class="more">${m}</div>`)}`;
  return isHead(at, table)
    ? html`<th scope="row"${attribute}>${inner}</th>`
    : html`<td${attribute}>${inner}</td>`;
}

function rowOf(row: Row, table: Table): Html {
  const remarks = row.remarks ?? [];
  const attribute = classOf(row.isTotal ? 'total' : row.isDropped && 'dropped', remarks.length > 0 && 'told');
  const cells = row.cells.map((cell, at) =>
    cellOf(cell, at, table, isTitle(at, table) && row.isDropped === true),
  );
  if (remarks.length === 0) return html`<tr${attribute}>${cells}</tr>\n`;
  // Under the row's name, past its number.
  const before = table.columns[0]?.width === 'number' ? 1 : 0;
  const across = table.columns.length - before;
  return html`<tr${attribute}>${cells}</tr>
<tr class="remarks">${before === 1 && html`<td></td>`}<td colspan="${across}">${remarks.map((r) => html`<p class="more">${r}</p>`)}</td></tr>\n`;
}

/** Neighbours of one group, as runs; a column without a group is a run of its own. */
function runsOf(columns: readonly Column[]): { readonly group: string | undefined; readonly span: number }[] {
  const runs: { group: string | undefined; span: number }[] = [];
  for (const { group } of columns) {
    const last = runs.at(-1);
    if (last && group !== undefined && last.group === group) last.span++;
    else runs.push({ group, span: 1 });
  }
  return runs;
}

function headsOf(table: Table, numberWord: string): Html {
  const isGrouped = table.columns.some((c) => c.group !== undefined);
  const cellOfHead = (c: Column, isAlone: boolean): Html => {
    const attribute = classOf(c.isFigure && 'figure', c.width && `w-${c.width}`);
    if (c.width === 'whiskers') return html`<td${attribute}>${table.scale && whiskerAxis(table.scale)}</td>`;
    const rows: Html = { html: isGrouped && isAlone ? ' rowspan="2"' : '' };
    return html`<th scope="col"${rows}${attribute}>${c.width === 'number' ? numberWord : c.title}</th>`;
  };
  if (!isGrouped) return html`<tr>${table.columns.map((c) => cellOfHead(c, true))}</tr>`;
  let at = 0;
  const first = runsOf(table.columns).map(({ group, span }) => {
    const column = table.columns[at];
    at += span;
    if (group === undefined) return column ? cellOfHead(column, true) : false;
    return html`<th scope="colgroup" colspan="${span}" class="group">${group}</th>`;
  });
  const second = table.columns.filter((c) => c.group !== undefined).map((c) => cellOfHead(c, false));
  return html`<tr>${first}</tr>\n<tr>${second}</tr>`;
}

function tableOf(table: Table, numberWord: string): Html {
  // The ends of an interval under a figure leave a table plain.
  const isPlain = table.rows.every(
    (r) =>
      !r.remarks?.length &&
      r.cells.every((c, at) => table.columns[at]?.isFigure || (c.more ?? []).length === 0 || c.text === ''),
  );
  const isDense = isPlain || table.columns.length > 5;
  return html`<table${classOf(isDense && 'dense', table.isSmall && 'cells')}><caption>${table.caption}</caption>\n<thead>${headsOf(table, numberWord)}</thead>\n<tbody>\n${table.rows.map((r) => rowOf(r, table))}</tbody></table>`;
}

/** Beyond so many letters a value gets the whole width. */
const longValue = 34;
/** And beyond this together with its label. */
const longTogether = 48;
const isLong = ({ label, value }: Fact) =>
  value.length > longValue || label.length + value.length > longTogether;

function factOf({ label, value, isUnknown }: Fact): Html {
  const attribute = classOf(isLong({ label, value }) && 'wide', isUnknown && 'unknown');
  return html`<div${attribute}><dt>${label}</dt><dd>${value}</dd></div>\n`;
}

const looks = { lead: 'lead', small: 'small', warn: 'warn-text', free: 'free' } as const;

function blockOf(block: Block, numberWord: string): Html {
  switch (block.kind) {
    case 'text':
      return html`<p${classOf(block.look && looks[block.look])}>${block.text}</p>`;
    case 'heading':
      return html`<h3>${block.text}</h3>`;
    case 'facts':
      // Short ones in two columns first, so that no long one leaves a hole beside its neighbour.
      return html`<dl class="facts">\n${[...block.facts.filter((f) => !isLong(f)), ...block.facts.filter(isLong)].map(factOf)}</dl>`;
    case 'groups':
      return html`<div class="groups">\n${block.groups.map(
        (g) => html`<div><h3>${g.title}</h3>\n<dl class="facts single">\n${g.facts.map(factOf)}</dl></div>\n`,
      )}</div>`;
    case 'table':
      return tableOf(block, numberWord);
    case 'chart':
      return html`<figure>${chartSvg(block.chart, block.id, { width: block.width ?? 720, height: block.height })}${
        block.caption !== '' && html`<figcaption>${block.caption}</figcaption>`
      }</figure>`;
    case 'list': {
      const items = block.items.map((item) => html`<li>${item}</li>\n`);
      const attribute = classOf(block.look);
      return block.isOrdered ? html`<ol${attribute}>\n${items}</ol>` : html`<ul${attribute}>\n${items}</ul>`;
    }
    case 'signatures':
      return html`<p>${block.text}</p>\n<div class="signatures">${block.lines.map((l) => html`<p>${l}</p>`)}</div>`;
  }
}

function sectionOf(section: Section, data: HandoverDocument): Html {
  const words = handoverPhrases(data.language);
  const attribute = classOf(
    section.isKeptWhole && 'whole',
    section.isHalf && 'half',
    section.startsPage && data.form === 'full' && 'new-page',
    section.staysWithLast && 'with-last',
  );
  const heading = `h-${section.id}`;
  return html`<section aria-labelledby="${heading}"${attribute}>
<h2 id="${heading}">${section.title}</h2>
${section.blocks.map((block) => html`${blockOf(block, words.number)}\n`)}</section>\n`;
}

function headOf(data: HandoverDocument): Html {
  const words = handoverPhrases(data.language);
  const meta = [
    [words.date, data.date],
    ...(data.customer === '' ? [] : [[words.forCustomer, data.customer]]),
    ...(data.shop === '' ? [] : [[words.byShop, data.shop]]),
  ];
  return html`<header class="head">
<div><p class="kind">${data.title}</p>
<h1>${data.carName}</h1>${data.sessionName !== data.carName && html`<p class="session">${data.sessionName}</p>`}</div>
${
  data.logo !== null &&
  html`<div class="brand"><img src="${data.logo.dataUrl}" alt="${data.shop === '' ? words.logo : data.shop}"></div>`
}
<dl class="meta">${meta.map(([label, value]) => html`<div><dt>${label ?? ''}</dt><dd>${value ?? ''}</dd></div>`)}</dl>
</header>`;
}

function topOf(data: HandoverDocument): Html {
  const { headline, figures } = data;
  return html`${data.invented !== null && html`<p class="invented">${data.invented}</p>\n`}<p class="headline"><span class="${headline.tone}">${headline.text}</span></p>
${headline.means !== '' && html`<p class="means">${headline.means}</p>\n`}${
  figures.length > 0 &&
  html`<dl class="figures">${figures.map(
    (f) =>
      html`<div><dt>${f.label}</dt><dd class="value">${f.value}</dd><dd class="more">${f.more}</dd></div>`,
  )}</dl>`
}`;
}

const policy =
  "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:; base-uri 'none'; form-action 'none'";

/**
 * The summary as one HTML file: no script, no outside reference, every value escaped, fonts and charts inside, laid
 * out for A4 or Letter. The same document and fonts give the same bytes.
 *
 * @param fonts  none: the reader's own fonts are used
 */
export function handoverHtml(data: HandoverDocument, fonts: readonly HandoverFont[] = []): string {
  const words = handoverPhrases(data.language);
  const body = html`<main class="${data.form} ${data.paper.toLowerCase()}" data-page="${words.page}">
${headOf(data)}
${topOf(data)}
${data.sections.map((s) => sectionOf(s, data))}</main>`.html;
  // The only text that goes past the escaping is made here, not read.
  const style: Html = { html: `${fontFaces(fonts, body)}\n${handoverStyle(data, words.page)}` };
  return html`<!DOCTYPE html>
<html lang="${data.language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>${footText(data)}</title>
<style>${style}</style>
</head>
<body>
${{ html: body }}
</body>
</html>
`.html;
}
