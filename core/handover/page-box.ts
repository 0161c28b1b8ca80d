import type { HandoverDocument } from './document/index.ts';

/** A sheet of paper with its margins, all in millimetres. */
export type PageBox = {
  readonly width: number;
  readonly height: number;
  readonly top: number;
  readonly side: number;
  readonly bottom: number;
};

/** Sources: ISO 216 for A4; ANSI/ASME Y14.1 for Letter, 8.5 by 11 inches. */
const papers = { A4: { width: 210, height: 297 }, Letter: { width: 215.9, height: 279.4 } } as const;
const margins = {
  full: { top: 16, side: 17, bottom: 19 },
  'one-page': { top: 10, side: 14, bottom: 12.5 },
} as const;

/** What a sheet of the summary measures; print and the preview on screen lay out the same box. */
export function pageBox({ paper, form }: Pick<HandoverDocument, 'paper' | 'form'>): PageBox {
  return { ...papers[paper], ...margins[form] };
}
