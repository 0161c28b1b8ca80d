import { handoverPhrases, type Language } from '../words/index.ts';
import { chartSvg } from './chart-svg.ts';
import { type Html, html } from './escape.ts';
import type { ChangeLine, Handover } from './handover-data.ts';
import { handoverStyle } from './handover-style.ts';

function whisker(line: ChangeLine, scale: NonNullable<Handover['scale']>): Html {
  const width = 180;
  const x = (value: number) => ((value - scale.low) / (scale.high - scale.low || 1)) * (width - 16) + 8;
  const w = line.whisker;
  return html`<svg viewBox="0 0 ${width} 16" class="whisker" aria-hidden="true"><line x1="${x(0)}" x2="${x(0)}" y1="0" y2="16" class="zero"/>${
    w &&
    html`<line x1="${x(w.low)}" x2="${x(w.high)}" y1="8" y2="8" class="span ${line.tone}"/><circle cx="${x(w.effect)}" cy="8" r="3.5" class="dot ${line.tone}"/>`
  }</svg>`;
}

function changeRow(line: ChangeLine, scale: Handover['scale']): Html {
  return html`<tr class="${line.state}"><th scope="row" class="number">${line.number}</th><td><strong>${line.title}</strong><br>${line.sentence}${
    line.note !== '' && html`<br><span class="note">${line.note}</span>`
  }</td><td class="figure">${line.pulls}</td><td class="figure">${line.effect}${scale && html`<br>${whisker(line, scale)}`}</td></tr>`;
}

/**
 * The handover as one HTML file: no script, no outside reference, every value escaped, fit for print on A4 and
 * Letter. The same data gives the same bytes.
 */
export function handoverHtml(data: Handover): string {
  const words = handoverPhrases(data.language as Language);
  const page = html`<!DOCTYPE html>
<html lang="${data.language}">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<title>${data.title}: ${data.sessionName}</title>
<style>${{ html: handoverStyle }}</style>
</head>
<body>
<main>
<header>
<p class="kind">${data.title}</p>
<h1>${data.sessionName}</h1>
<p class="date">${data.date}</p>
${data.invented !== null && html`<p class="invented">${data.invented}</p>`}
</header>
<p class="headline">${data.headline}</p>
<section aria-label="${words.car}">
<h2>${words.car}</h2>
<dl>${data.facts.map((f) => html`<div><dt>${f.label}</dt><dd>${f.value}</dd></div>`)}</dl>
</section>
${
  data.chart &&
  html`<section aria-label="${words.powerChart}"><h2>${words.powerChart}</h2><figure>${chartSvg(data.chart, 'power')}</figure></section>`
}
<section aria-label="${words.changes}">
<h2>${words.changes}</h2>
<table>
<thead><tr><th scope="col"></th><th scope="col">${words.change}</th><th scope="col" class="figure">${words.pulls}</th><th scope="col" class="figure">${words.worth}</th></tr></thead>
<tbody>${data.changes.map((line) => changeRow(line, data.scale))}</tbody>
</table>
</section>
${data.notes !== '' && html`<section aria-label="${words.notes}"><h2>${words.notes}</h2><p class="free">${data.notes}</p></section>`}
<section class="keep" aria-label="${words.method}">
<h2>${words.method}</h2>
<ol>${words.methodLines.map((l) => html`<li>${l}</li>`)}</ol>
</section>
<section class="keep caution" aria-label="${words.cautions}">
<h2>${words.cautions}</h2>
<ul>${words.cautionLines.map((l) => html`<li>${l}</li>`)}</ul>
</section>
<section class="keep signatures" aria-label="${words.signatures}">
<h2>${words.signatures}</h2>
<div class="lines"><p>${words.tuner}</p><p>${words.customer}</p><p>${words.date}</p></div>
</section>
</main>
</body>
</html>
`;
  return page.html;
}
