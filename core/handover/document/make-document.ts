import type { HandoverChoices } from '../../session/index.ts';
import { imperialUnits, metricUnits, type UnitChoice } from '../../units/index.ts';
import { createShow, type Language } from '../../words/index.ts';
import type { HandoverFacts, HandoverSource } from '../facts/index.ts';
import { carSection, limitsSection, methodSection } from './car-sections.ts';
import { changesSection, droppedSection, partsSection } from './changes-section.ts';
import { fluidSection, guardSection, lightLines, protectionSection } from './fluid-sections.ts';
import { gatesSection } from './gates-section.ts';
import type { HandoverDocument, Section } from './handover-document.ts';
import { chartSection, headlineOf, keyFigures } from './result-section.ts';
import { settingsSection } from './settings-section.ts';
import { sparkSection } from './spark-section.ts';
import { createTeller, type Teller } from './teller.ts';
import { visitSection } from './visit-section.ts';

/** How the sheet is to look and read, the session's own choices filled up by the program's. */
export type HandoverLook = {
  readonly language: Language;
  readonly units: UnitChoice;
  readonly form: HandoverChoices['form'];
  readonly paper: HandoverChoices['paper'];
};

/** The units that a customer reads: as chosen in the session, else those of the program. */
export function customerUnits(chosen: HandoverChoices['units'], usual: UnitChoice): UnitChoice {
  if (chosen === null) return usual;
  if (chosen === 'imperial') return imperialUnits;
  return chosen === 'metric-ps' ? { ...metricUnits, power: 'PS' } : metricUnits;
}

/**
 * The customer's summary of a session, in the customer's language and units. Pure: the same session, look and date
 * give the same document. What is unknown is said to be unknown.
 */
export function handoverDocument(
  facts: HandoverFacts,
  source: HandoverSource,
  look: HandoverLook,
): HandoverDocument {
  const teller = createTeller(facts, source, createShow(look.language, look.units));
  const { words, show } = teller;
  const { session } = source;
  return {
    language: look.language,
    form: look.form,
    paper: look.paper,
    title: words.title,
    sessionName: session.name,
    carName: session.car.name === '' ? session.name : session.car.name,
    date: show.date(facts.date),
    dateIso: facts.date,
    customer: facts.customer,
    shop: facts.shop,
    logo: session.handover.logo,
    invented: session.isInvented ? words.invented : null,
    headline: headlineOf(teller),
    figures: keyFigures(teller),
    sections: look.form === 'full' ? fullSections(teller, look) : shortSections(teller, look),
  };
}

function fullSections(teller: Teller, look: HandoverLook): Section[] {
  const parts = partsSection(teller);
  return [
    chartSection(teller, look),
    settingsSection(teller, false),
    changesSection(teller, false),
    ...(parts ? [parts] : []),
    droppedSection(teller),
    gatesSection(teller),
    // What the next tuner looks up.
    guardSection(teller),
    sparkSection(teller),
    // One page of what the driver has to know, to keep in the car.
    { ...protectionSection(teller), startsPage: true },
    fluidSection(teller),
    carSection(teller),
    methodSection(teller),
    ...visitSection(teller),
    limitsSection(teller),
    ...noteSections(teller),
    cautionSection(teller),
    signatureSection(teller),
  ];
}

function shortSections(teller: Teller, look: HandoverLook): Section[] {
  const { words } = teller;
  return [
    chartSection(teller, look),
    { ...settingsSection(teller, true), isHalf: true },
    changesSection(teller, true),
    {
      id: 'light',
      title: words.light,
      isKeptWhole: true,
      isHalf: true,
      blocks: [{ kind: 'list', isOrdered: true, items: lightLines(teller), look: 'warn' }],
    },
    { ...cautionSection(teller), isHalf: true },
    { ...signatureSection(teller), staysWithLast: false },
  ];
}

function noteSections({ facts, words }: Teller): Section[] {
  if (facts.note.trim() === '') return [];
  return [{ id: 'note', title: words.note, blocks: [{ kind: 'text', text: facts.note, look: 'free' }] }];
}

function cautionSection({ words }: Teller): Section {
  return {
    id: 'cautions',
    title: words.cautions,
    isKeptWhole: true,
    blocks: [{ kind: 'list', isOrdered: false, items: words.cautionLines, look: 'warn' }],
  };
}

function signatureSection({ words }: Teller): Section {
  return {
    id: 'signatures',
    title: words.signatures,
    isKeptWhole: true,
    staysWithLast: true,
    blocks: [{ kind: 'signatures', text: words.received, lines: [words.tuner, words.customer, words.date] }],
  };
}
