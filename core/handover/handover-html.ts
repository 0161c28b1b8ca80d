import { handoverPhrases } from '../words/index.ts';
import { chartSvg } from './chart-svg.ts';
import type { Block, Cell, Fact, HandoverDocument, Row, Section } from './document/index.ts';
import { type Html, html } from './escape.ts';
import { fontFaces, type HandoverFont } from './handover-fonts.ts';
import { handoverStyle } from './handover-style.ts';

type Table = Extract<Block, { kind: 'table' }>;

function whisker(cell: Cell, scale: Table['scale']): Html | false {
  const { whisker: w } = cell;
  if (!w || !scale) return false;
  const width = 180;
  const x = (value: number) =>
    Math.round((((value - scale.low) / (scale.high - scale.low || 1)) * (width - 16) + 8) * 100) / 100;
  const tone = cell.tone ?? 'none';
  return html`<svg viewBox="0 0 ${width} 16" class="whisker" aria-hidden="true"><line x1="${x(0)}" x2="${x(0)}" y1="0" y2="16" class="zero"/><line x1="${x(w.low)}" x2="${x(w.high)}" y1="8" y2="8" class="span ${tone}"/><circle cx="${x(w.effect)}" cy="8" r="4" class="dot ${tone}"/></svg>`;
}

function cellOf(cell: Cell, at: number, table: Table): Html {
  const column = table.columns[at];
  // The first cell names its row; a bare number is no name, so the one after it does.
  const isHead = at === 0 || (at === 1 && table.columns[0]?.title === '');
  const classes = [column?.isFigure && 'figure', cell.tone && `t-${cell.tone}`].filter(Boolean).join(' ');
  const inner = html`${whisker(cell, table.scale)}${cell.text}${(cell.more ?? []).map((m) => html`<div class="more">${m}</div>`)}`;
  const attribute: Html = { html: classes === '' ? '' : ` class="${classes}"` };
  return isHead ? html`<th scope="row"${attribute}>${inner}</th>` : html`<td${attribute}>${inner}</td>`;
}

function rowOf(row: Row, table: Table): Html {
  const kind: Html = { html: row.isTotal ? ' class="total"' : row.isDropped ? ' class="dropped"' : '' };
  return html`<tr${kind}>${row.cells.map((cell, at) => cellOf(cell, at, table))}</tr>\n`;
}

function tableOf(table: Table, numberWord: string): Html {
  const heads = table.columns.map((c) => {
    const classes = [c.isFigure && 'figure', c.width && `w-${c.width}`].filter(Boolean).join(' ');
    const attribute: Html = { html: classes === '' ? '' : ` class="${classes}"` };
    return html`<th scope="col"${attribute}>${c.title === '' ? numberWord : c.title}</th>`;
  });
  const isDense = table.rows.every((r) => r.cells.every((c) => (c.more ?? []).length === 0 || c.text === ''));
  const attribute: Html = { html: isDense || table.columns.length > 4 ? ' class="dense"' : '' };
  return html`<table${attribute}><caption>${table.caption}</caption>\n<thead><tr>${heads}</tr></thead>\n<tbody>\n${table.rows.map((r) => rowOf(r, table))}</tbody></table>`;
}

/** Beyond this a value gets the whole width. */
const longValue = 34;
const longTogether = 54;
const isLong = ({ label, value }: Fact) =>
  value.length > longValue || label.length + value.length > longTogether;

function factOf({ label, value, isUnknown }: Fact): Html {
  const classes = [isLong({ label, value }) && 'wide', isUnknown && 'unknown'].filter(Boolean).join(' ');
  const attribute: Html = { html: classes === '' ? '' : ` class="${classes}"` };
  return html`<div${attribute}><dt>${label}</dt><dd>${value}</dd></div>\n`;
}

const looks = { lead: 'lead', small: 'small', warn: 'warn-text', free: 'free' } as const;

function blockOf(block: Block, numberWord: string): Html {
  switch (block.kind) {
    case 'text': {
      const attribute: Html = { html: block.look ? ` class="${looks[block.look]}"` : '' };
      return html`<p${attribute}>${block.text}</p>`;
    }
    case 'heading':
      return html`<h3>${block.text}</h3>`;
    case 'facts':
      // Short ones in two columns first, so that no long one leaves a hole beside its neighbour.
      return html`<dl class="facts">\n${[...block.facts.filter((f) => !isLong(f)), ...block.facts.filter(isLong)].map(factOf)}</dl>`;
    case 'table':
      return tableOf(block, numberWord);
    case 'chart':
      return html`<figure>${chartSvg(block.chart, block.id, { width: block.width ?? 720, height: block.height })}${
        block.caption !== '' && html`<figcaption>${block.caption}</figcaption>`
      }</figure>`;
    case 'list': {
      const items = block.items.map((item) => html`<li>${item}</li>\n`);
      const attribute: Html = { html: block.look === 'warn' ? ' class="warn"' : '' };
      return block.isOrdered ? html`<ol${attribute}>\n${items}</ol>` : html`<ul${attribute}>\n${items}</ul>`;
    }
    case 'signatures':
      return html`<p>${block.text}</p>\n<div class="signatures">${block.lines.map((l) => html`<p>${l}</p>`)}</div>`;
  }
}

function sectionOf(section: Section, data: HandoverDocument): Html {
  const words = handoverPhrases(data.language);
  const classes = [
    section.isKeptWhole && 'whole',
    section.isHalf && 'half',
    section.startsPage && data.form === 'full' && 'new-page',
  ].filter(Boolean);
  const attribute: Html = { html: classes.length > 0 ? ` class="${classes.join(' ')}"` : '' };
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
<div class="brand">${
    data.logo !== null &&
    html`<img src="${data.logo.dataUrl}" alt="${data.shop === '' ? words.logo : data.shop}">`
  }<dl class="meta">${meta.map(([label, value]) => html`<dt>${label ?? ''}</dt><dd>${value ?? ''}</dd>`)}</dl></div>
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
  const body = html`<main class="${data.form} ${data.paper.toLowerCase()}">
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
<title>${data.title}: ${data.carName}, ${data.date}</title>
<style>${style}</style>
</head>
<body>
${{ html: body }}
</body>
</html>
`.html;
}
