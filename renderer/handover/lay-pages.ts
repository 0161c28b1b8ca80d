import { type PageBox, pageBox } from '../../core/handover/index.ts';
import { otherWork } from '../hooks/other-work.ts';

/** Between the columns that the sheets are cut from; only has to be wider than anything that sticks out. */
const gap_mm = 30;

function styleOf(box: PageBox): string {
  const width = box.width - 2 * box.side;
  const height = box.height - box.top - box.bottom;
  return `@media screen{
html{background:var(--desk,#e4dfd3)}
body{background:none}
body>main{position:absolute!important;width:1px!important;min-height:0!important;height:1px;padding:0!important;overflow:clip;clip-path:inset(50%)}
.sheets{display:grid;justify-content:center;gap:6mm;padding:6mm 0;zoom:var(--zoom,1)}
.sheet{position:relative;width:${box.width}mm;height:${box.height}mm;background:#fff}
.window{position:absolute;top:${box.top}mm;left:${box.side}mm;width:${width}mm;height:${height}mm;overflow:clip;overflow-clip-margin:2mm}
.flow{width:${width}mm;height:${height}mm;columns:1;column-gap:${gap_mm}mm;column-fill:auto;translate:calc(var(--at)*${-(width + gap_mm)}mm)}
.flow .new-page{break-before:column;border-top:0;padding-top:0;margin-top:0}
.foot{position:absolute;left:${box.side}mm;right:${box.side}mm;top:${box.height - box.bottom + 3}mm;display:flex;justify-content:space-between;margin:0;font-size:8pt;color:#5b6670}
}
@media print{.sheets{display:none}}`;
}

function element(doc: Document, name: string, className: string, ...inside: Node[]): HTMLElement {
  const made = doc.createElement(name);
  made.className = className;
  made.append(...inside);
  return made;
}

/**
 * Shows a summary as the sheets that it prints on. The page is flowed into columns of a sheet's size, which the
 * browser breaks by the rules of print, and each sheet looks at one of them. What is printed and what a screen reader
 * reads stays the page itself. Sheet after sheet is filled, with room for other work between them.
 *
 * @param onPlaced  called once all sheets have their places, so that the page can be scrolled to where it stood
 * @returns         number of sheets
 */
export async function layPages(doc: Document, onPlaced: () => void): Promise<number> {
  const main = doc.querySelector('main');
  const pageWord = main?.dataset.page ?? '';
  if (!main || doc.querySelector('.sheets')) return 0;
  const box = pageBox({
    paper: main.classList.contains('letter') ? 'Letter' : 'A4',
    form: main.classList.contains('one-page') ? 'one-page' : 'full',
  });
  const style = doc.createElement('style');
  style.textContent = styleOf(box);
  doc.head.append(style);
  await doc.fonts.ready;
  const sheets = element(doc, 'div', 'sheets');
  sheets.setAttribute('aria-hidden', 'true');
  doc.body.append(sheets);
  const windows: HTMLElement[] = [];
  const addSheet = () => {
    const window = element(doc, 'div', 'window');
    const foot = element(doc, 'p', 'foot', doc.createElement('span'), doc.createElement('span'));
    sheets.append(element(doc, 'div', 'sheet', window, foot));
    windows.push(window);
  };
  const fill = (at: number): HTMLElement => {
    const flow = element(
      doc,
      'div',
      `flow ${main.className}`,
      ...[...main.childNodes].map((n) => n.cloneNode(true)),
    );
    // Marks stay with the page itself; drawings find their clips there.
    for (const marked of flow.querySelectorAll('[id]')) marked.removeAttribute('id');
    flow.style.setProperty('--at', `${at}`);
    windows[at]?.append(flow);
    return flow;
  };
  addSheet();
  const first = fill(0);
  const oneWide = box.width - 2 * box.side;
  const columns = (first.scrollWidth / first.clientWidth) * oneWide;
  const count = Math.max(1, Math.round((columns + gap_mm) / (oneWide + gap_mm)));
  for (let at = 1; at < count; at++) addSheet();
  for (const [at, foot] of [...sheets.querySelectorAll('.foot')].entries()) {
    const [left, right] = foot.children;
    if (left) left.textContent = doc.title;
    if (right) right.textContent = `${pageWord} ${at + 1} / ${count}`;
  }
  onPlaced();
  for (let at = 1; at < count; at++) {
    await otherWork();
    if (!sheets.isConnected || !doc.defaultView) return count;
    fill(at);
  }
  return count;
}

/** Sheets no wider than the frame, on the screen's own desk; smaller paper is not blown up. */
export function fitPages(doc: Document, width_px: number, desk: string): void {
  doc.documentElement.style.setProperty('--desk', desk);
  const sheet = doc.querySelector('main')?.classList.contains('letter') ? 215.9 : 210;
  const needed = ((sheet + 12) / 25.4) * 96;
  doc.documentElement.style.setProperty('--zoom', `${Math.min(1, width_px / needed)}`);
}
