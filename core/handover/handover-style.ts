import { printInks } from './chart-svg.ts';
import { cssText } from './css-text.ts';
import type { HandoverDocument } from './document/index.ts';
import { pageBox } from './page-box.ts';

/** What stands at the foot of every sheet and is the page's title. */
export function footText(data: HandoverDocument): string {
  return `${data.title}: ${data.carName}, ${data.date}`;
}

/** The page itself: size, margins, and a foot that says which sheet of which car this is. */
function pageRules(data: HandoverDocument, pageWord: string): string {
  const foot = cssText(footText(data));
  const { top, side, bottom } = pageBox(data);
  const box = 'font:8pt "Handover Sans",sans-serif;color:#5b6670;padding-top:3mm;vertical-align:top';
  const number = `${cssText(`${pageWord} `)} counter(page) ${cssText(' / ')} counter(pages)`;
  return `@page{size:${data.paper === 'A4' ? 'A4' : 'Letter'};margin:${top}mm ${side}mm ${bottom}mm;@bottom-left{content:${foot};${box}}@bottom-right{content:${number};${box}}}`;
}

const shared = `
:root{--ink:#1d2730;--soft:#55606a;--rule:#d5cfc1;--hair:#e6e1d6;--gain:#1b6e60;--loss:#8a2e57;--doubt:#7a5c0c;--wash:#f6f3ec;color-scheme:light}
*{box-sizing:border-box}
html{background:#fff;-webkit-print-color-adjust:exact;print-color-adjust:exact}
body{margin:0;color:var(--ink);font:400 10.4pt/1.48 "Handover Sans","Handover Serif","Segoe UI",system-ui,-apple-system,Arial,sans-serif;font-variant-numeric:tabular-nums;hyphens:manual}
h1,h2,.headline,.figures dd{font-family:"Handover Serif",Georgia,"Times New Roman",serif;font-variant-numeric:tabular-nums lining-nums}
main{margin:0 auto}
p,li,.more{text-wrap:pretty}
.head{display:grid;grid-template-columns:minmax(0,1fr) auto;gap:3.5mm 10mm;align-items:start;padding-bottom:4mm;border-bottom:1.4pt solid var(--ink)}
.kind{margin:0 0 1mm;color:var(--soft);font-size:10pt}
h1{font-size:24pt;font-weight:500;line-height:1.12;margin:0;overflow-wrap:anywhere}
.session{margin:1.2mm 0 0;color:var(--soft)}
.brand{max-width:60mm}
.brand img{display:block;max-width:52mm;max-height:18mm;margin:0 0 0 auto;object-fit:contain;object-position:right top}
.meta{grid-column:1/-1;display:flex;flex-wrap:wrap;gap:1.5mm 12mm;margin:0}
.meta div{max-width:80mm}
.meta dt{color:var(--soft);font-size:9pt;line-height:1.3}.meta dd{margin:0;overflow-wrap:anywhere}
.invented{margin:3.5mm 0 0;padding:1.6mm 3.5mm;border-left:2.2pt solid var(--doubt);color:var(--doubt);font-size:9.6pt}
.headline{text-wrap:balance;font-size:17pt;font-weight:450;line-height:1.28;margin:6mm 0 0}
.headline .gain{color:var(--gain)}.headline .loss{color:var(--loss)}.headline .doubt{color:var(--doubt)}
.means{margin:1.6mm 0 0;color:var(--soft)}
.figures{display:grid;grid-template-columns:repeat(3,1fr);gap:0 8mm;margin:5mm 0 0;padding:3.2mm 0;border-top:.6pt solid var(--rule);border-bottom:.6pt solid var(--rule)}
.figures div{display:flex;flex-direction:column}
.figures dt{font-size:9.4pt;font-weight:600;line-height:1.35}
.figures dd{margin:0}
.figures .value{order:-1;font-size:17pt;font-weight:500;line-height:1.25}
.figures .more{font-family:"Handover Sans",sans-serif;color:var(--soft);font-size:9pt;line-height:1.35}
section{margin:6.5mm 0 0}
h2{font-size:13.5pt;font-weight:550;line-height:1.25;margin:0 0 2.4mm;break-after:avoid}
h3{font:700 10.4pt/1.35 "Handover Sans",sans-serif;margin:4mm 0 1.2mm;break-after:avoid}
h2+h3,.groups h3{margin-top:0}
section:not(.whole)>h2{break-inside:avoid}
section:not(.whole)>h2::after{content:"";display:block;height:42mm;margin-bottom:-42mm}
p{margin:1.6mm 0;orphans:3;widows:3}
table+p,.groups+p{break-before:avoid}
.small:has(+table){break-after:avoid}
.small{color:var(--soft);font-size:9.4pt;line-height:1.42}
.warn-text{padding:1.6mm 3.5mm;border-left:2.2pt solid var(--loss);color:var(--loss)}
.free{white-space:pre-line;overflow-wrap:anywhere}
.facts{display:grid;grid-template-columns:1fr 1fr;gap:0 10mm;margin:0}
.facts div{display:flex;justify-content:space-between;gap:4mm;border-bottom:.5pt solid var(--hair);padding:1.1mm 0;break-inside:avoid}
.facts .wide{grid-column:1/-1}
.facts dt{color:var(--soft);flex:0 1 auto}
.facts{break-inside:avoid}
.facts.single,.groups .facts{grid-template-columns:1fr}
.groups{display:grid;grid-template-columns:1fr 1fr;gap:0 10mm;break-inside:avoid}
.facts dd{margin:0;text-align:right;text-wrap:balance;font-weight:500;flex:0 1 auto;overflow-wrap:anywhere}
.facts .wide dd{max-width:76%}.groups .facts .wide dd{max-width:none}
.facts .unknown dd{color:var(--doubt);font-style:italic;font-weight:400;padding-right:.6mm}
figure{margin:0;break-inside:avoid}
figure+figure{margin-top:4mm}
figcaption{color:var(--soft);font-size:9.2pt;line-height:1.4;margin-top:1.5mm}
.chart{width:100%;height:auto;display:block}
.chart text{font-size:11.5px;fill:var(--soft);font-family:"Handover Sans",sans-serif}
.chart .label{font-size:12.5px;font-weight:700;paint-order:stroke;stroke:#fff;stroke-width:4px}
.chart .axis{fill:var(--ink)}
.chart .grid{stroke:var(--hair);stroke-width:.8}
table{width:100%;border-collapse:collapse}
caption{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
tr{break-inside:avoid}
thead{display:table-header-group;break-after:avoid}
.dense tbody tr:nth-last-child(2){break-after:avoid}
th,td{padding:1.7mm 2.4mm;border-bottom:.5pt solid var(--hair);text-align:left;vertical-align:top;font-weight:400;overflow-wrap:break-word}
th:first-child,td:first-child{padding-left:0}th:last-child,td:last-child{padding-right:0}
thead th,thead td{color:var(--soft);font-size:9.2pt;line-height:1.3;vertical-align:bottom;border-bottom:.8pt solid var(--ink)}
thead .group{text-align:center;border-bottom:.5pt solid var(--rule)}
.figure{text-align:right}
td.figure,th.figure{font-variant-numeric:tabular-nums}
tbody td.figure,thead .w-effect{white-space:nowrap}
.w-number{width:2.4em}.w-small{width:4.4em}.w-medium{width:8em}.w-name{width:13em}.w-whiskers{width:40mm}.w-effect{width:8.6em}
tbody th{font-weight:600}
.dense th,.dense td{padding-top:.7mm;padding-bottom:.7mm}
td .more,th .more{color:var(--soft);font-weight:400;font-size:9.4pt;line-height:1.42;white-space:pre-line;margin:.6mm 0 0}
td.figure .more{font-size:9pt;white-space:nowrap}
.told{break-after:avoid}.told th,.told td{border-bottom:0;padding-bottom:0}.remarks td{padding-top:.2mm}.remarks .more{margin:.4mm 0 0}
.cells{font-size:8.1pt;line-height:1.3;table-layout:fixed}
.cells th,.cells td,.cells thead th{padding:.6mm .5mm;text-align:right;font-size:8.1pt;white-space:nowrap}
.cells thead th.group{text-align:center}
.cells tbody th,.cells thead th[rowspan]{text-align:left;padding-left:0}
.cells thead th[rowspan]{width:22mm;white-space:normal}
.dropped .title{text-decoration:line-through;text-decoration-thickness:.6pt}
.total th,.total td{border-top:.8pt solid var(--ink);border-bottom:0;font-weight:700}
.t-loss{color:var(--loss)}.t-doubt{color:var(--doubt)}
.whisker{display:block;width:100%;height:auto;margin-top:.25mm}thead .whisker{margin:0}
.whisker text{font:11.5px "Handover Sans",sans-serif;fill:var(--soft)}
.whisker .tick{stroke:#9aa0a5;stroke-width:1}
.whisker .zero{stroke:#9aa0a5;stroke-width:1;stroke-dasharray:1 2}
.whisker .span{stroke:#55606a;stroke-width:2.4}
.whisker .dot{fill:#55606a}
.whisker .gain{stroke:var(--gain)}.whisker .dot.gain{fill:var(--gain)}
.whisker .loss{stroke:var(--loss)}.whisker .dot.loss{fill:var(--loss)}
.whisker .doubt{stroke:var(--doubt)}.whisker .dot.doubt{fill:#fff}
ol,ul{margin:1.6mm 0 0;padding-left:5.5mm;break-inside:avoid}
li{margin:1.1mm 0;break-inside:avoid;overflow-wrap:anywhere}
.warn{padding:1.6mm 4mm 1.6mm 8.5mm;border-left:2.2pt solid var(--doubt);background:var(--wash)}
.signatures{display:grid;grid-template-columns:2fr 2fr 1fr;gap:8mm;margin-top:15mm;break-inside:avoid}
.signatures p{border-top:.8pt solid var(--ink);padding-top:1.2mm;color:var(--soft);margin:0;font-size:9.4pt}
.whole{break-inside:avoid}
.with-last{break-before:avoid}
.half{display:inline-block;width:calc(50% - 3mm);vertical-align:top}.half+.half{margin-left:5mm}.half .facts{grid-template-columns:1fr}
.one-page{font-size:8.1pt;line-height:1.3}
.one-page h1{font-size:18pt}.one-page .head{padding-bottom:2.5mm}
.one-page .headline{font-size:12.4pt;margin-top:3mm}.one-page .means{margin-top:.6mm}
.one-page .figures{margin-top:2.4mm;padding:1.6mm 0}.one-page .figures .value{font-size:13pt}
.one-page .figures dt,.one-page .figures .more{font-size:7.6pt;line-height:1.25}
.one-page section{margin-top:1.9mm}.one-page h2{font-size:10.6pt;margin-bottom:.8mm}
.one-page .facts div{padding:.4mm 0}.one-page .facts dd{line-height:1.2}.one-page th,.one-page td{padding-top:.6mm;padding-bottom:.6mm}
.one-page li{margin:.3mm 0}.one-page ol,.one-page ul{margin-top:.6mm}.one-page .warn{padding-top:.4mm;padding-bottom:.4mm}.one-page .warn-text{padding-top:.8mm;padding-bottom:.8mm}
.one-page .more,.one-page .small{font-size:7.6pt}.one-page .invented{margin-top:1.6mm;padding:.6mm 3mm;font-size:8.4pt}
.one-page .meta,.one-page .kind{font-size:8.6pt}.one-page .head{gap:1.5mm 8mm}.one-page .meta div{display:flex;gap:2mm;align-items:baseline}.one-page .meta dt{font-size:7.6pt}.one-page .figures{gap:0 4mm}.one-page thead th,.one-page thead td{font-size:7.6pt}.one-page .brand img{max-height:14mm}
.one-page .signatures{margin-top:7mm}.one-page .signatures p{font-size:7.6pt}.one-page .session{display:none}.one-page .warn{padding-left:6.5mm;padding-right:2.5mm}.one-page .chart text{font-size:12.5px}.one-page p{margin:.6mm 0}
`;

/** On a screen the sheet lies on a desk; small screens get one column. */
const onScreen = `
@media screen{html{background:#e4dfd3}main{width:min(100%,210mm);min-height:100vh;padding:14mm 17mm;background:#fff}main.letter{width:min(100%,216mm)}.new-page{border-top:1pt dashed var(--rule);padding-top:7mm}}
@media screen and (max-width:640px){main{padding:6mm 5mm}main .facts,main .groups,main .figures,main .head{grid-template-columns:1fr}main .brand img{margin-left:0}}
@media print{.new-page{break-before:page;margin-top:0}main{width:auto}}
`;

/** A label in the ink of its line. */
const labelInks = Object.entries(printInks)
  .map(([ink, colour]) => `.chart .ink-${ink}{fill:${colour}}`)
  .join('');

export function handoverStyle(data: HandoverDocument, pageWord: string): string {
  return pageRules(data, pageWord) + shared + labelInks + onScreen;
}
