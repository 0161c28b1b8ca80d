/** Print style of the handover: system fonts, as a file that must stand alone brings none. */
export const handoverStyle = `
:root{--ink:#1d2730;--soft:#5b6670;--rule:#d5cfc1;--gain:#1b6e60;--loss:#8a2e57;--doubt:#8a6a13;color-scheme:light}
@page{margin:16mm 15mm}
*{box-sizing:border-box}
html{background:#fff}
body{margin:0;color:var(--ink);font:15px/1.5 "Atkinson Hyperlegible Next","Segoe UI",system-ui,-apple-system,"Helvetica Neue",Arial,sans-serif;font-variant-numeric:tabular-nums}
main{max-width:760px;margin:0 auto;padding:40px 24px}
h1,h2,.headline{font-family:Literata,Georgia,"Times New Roman",serif}
h1{font-size:30px;line-height:1.2;margin:0}
h2{font-size:17px;margin:28px 0 8px;padding-bottom:4px;border-bottom:1px solid var(--rule)}
.kind,.date{margin:0;color:var(--soft)}
.invented{margin:10px 0 0;padding:6px 12px;border-left:3px solid var(--doubt);color:var(--doubt)}
.headline{font-size:22px;line-height:1.35;margin:22px 0 0}
dl{display:grid;grid-template-columns:1fr 1fr;gap:2px 32px;margin:0}
dl div{display:flex;justify-content:space-between;gap:16px;border-bottom:1px solid var(--rule);padding:4px 0}
dt{color:var(--soft)}dd{margin:0;text-align:right}
figure{margin:0}
.chart{width:100%;height:auto;display:block}
.chart text{font-size:12px;fill:var(--soft)}
.chart .label{font-size:13px;font-weight:700;paint-order:stroke;stroke:#fff;stroke-width:4px}
.chart .grid{stroke:var(--rule);stroke-width:.7}
table{width:100%;border-collapse:collapse}
th,td{padding:8px 8px;border-bottom:1px solid var(--rule);text-align:left;vertical-align:top}
thead th{color:var(--soft);font-weight:400;font-size:14px}
.number{width:2em;font-family:Literata,Georgia,serif;font-weight:400}
.figure{text-align:right;white-space:nowrap}
td .note{color:var(--soft);white-space:pre-line}
tr.dropped strong{text-decoration:line-through;text-decoration-thickness:1px}
.whisker{width:180px;height:16px}
.whisker .zero{stroke:var(--rule);stroke-width:1}
.whisker .span{stroke:var(--soft);stroke-width:2}
.whisker .dot{fill:var(--soft)}
.whisker .gain{stroke:var(--gain)}.whisker .dot.gain{fill:var(--gain)}
.whisker .loss{stroke:var(--loss)}.whisker .dot.loss{fill:var(--loss)}
.whisker .doubt{stroke:var(--doubt)}.whisker .dot.doubt{fill:var(--doubt)}
ol,ul{margin:0;padding-left:1.3em}li{margin:3px 0}
.free{white-space:pre-line}
.caution ul{padding:8px 12px 8px 1.6em;border-left:3px solid var(--doubt)}
.signatures .lines{display:grid;grid-template-columns:2fr 2fr 1fr;gap:28px;margin-top:44px}
.signatures p{border-top:1px solid var(--ink);padding-top:4px;color:var(--soft);margin:0}
@media print{main{padding:0;max-width:none}body{font-size:10.5pt}h1{font-size:20pt}.headline{font-size:15pt}section,tr,figure{break-inside:avoid}h2{break-after:avoid}}
@media (max-width:560px){dl{grid-template-columns:1fr}}
`;
