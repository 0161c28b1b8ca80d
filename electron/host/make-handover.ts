import type { HandoverFormat } from '../../core/contract/index.ts';
import {
  customerUnits,
  HandoverFactsSchema,
  type HandoverSource,
  handoverCsv,
  handoverDocument,
  handoverFacts,
  handoverHtml,
  handoverSource,
} from '../../core/handover/index.ts';
import { ok, type Result } from '../../core/result/index.ts';
import {
  type Analyses,
  entryPulls,
  type HandoverChoices,
  type SessionState,
} from '../../core/session/index.ts';
import type { UnitChoice } from '../../core/units/index.ts';
import type { Language } from '../../core/words/index.ts';
import { slug } from '../store/index.ts';
import { handoverFonts } from './handover-fonts.ts';

/** What is asked of a summary; what is left out follows the session's own choices, then the program's. */
export type HandoverWish = {
  readonly language?: Language | undefined;
  readonly units?: HandoverChoices['units'] | undefined;
  readonly form?: HandoverChoices['form'] | undefined;
  readonly paper?: HandoverChoices['paper'] | undefined;
  readonly date: string;
};

/** How this machine makes a PDF of a page. */
export type PrintPdf = (page: { html: string; date: string }) => Promise<Result<Uint8Array>>;

export type MadeHandover = {
  readonly stem: string;
  readonly date: string;
  readonly html: string;
  readonly facts: string;
  readonly csv: string;
};

/** The customer's summary in its three texts; the same session, wish and date give the same bytes. */
export async function makeHandover(
  state: SessionState,
  analyses: Analyses,
  usual: { readonly language: Language; readonly units: UnitChoice },
  wish: HandoverWish,
  last: HandoverSource | null = null,
): Promise<MadeHandover> {
  const { session } = state;
  const chosen = session.handover;
  const source = handoverSource(session, entryPulls(session, state.runs, analyses));
  const facts = HandoverFactsSchema.parse(handoverFacts(source, wish.date, last));
  const look = {
    language: wish.language ?? chosen.language ?? usual.language,
    units: customerUnits(wish.units ?? chosen.units, usual.units),
    form: wish.form ?? chosen.form,
    paper: wish.paper ?? chosen.paper,
  };
  const html = handoverHtml(handoverDocument(facts, source, look), await handoverFonts());
  const form = look.form === 'one-page' ? '-one-page' : '';
  return {
    stem: `${wish.date}-${slug(session.name, 'session')}${form}-${look.language}`,
    date: wish.date,
    html,
    facts: `${JSON.stringify(facts, null, 2)}\n`,
    csv: handoverCsv(facts),
  };
}

export const handoverTypes: Readonly<Record<HandoverFormat, string>> = {
  html: 'text/html',
  pdf: 'application/pdf',
  csv: 'text/csv',
  json: 'application/json',
};

/** One of the forms as bytes. */
export async function handoverBytes(
  made: MadeHandover,
  format: HandoverFormat,
  printPdf: PrintPdf,
): Promise<Result<Uint8Array>> {
  if (format === 'pdf') return printPdf({ html: made.html, date: made.date });
  // A spreadsheet takes a CSV without the mark for something older than UTF-8.
  const texts = { html: made.html, json: made.facts, csv: `\uFEFF${made.csv}` };
  return ok(new TextEncoder().encode(texts[format]));
}
