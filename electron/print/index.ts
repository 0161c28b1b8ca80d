export { findBrowser } from './find-browser.ts';
export { printWithBrowser } from './print-with-browser.ts';
export { steadyPdf } from './steady-pdf.ts';
