import type { Entry, RunRecord } from '../session/index.ts';
import { entryTitle } from './entry-title.ts';
import type { Language, Show } from './show.ts';

/** What a place in a session needs to be named: its ledger and its runs. */
export type NamedParts = {
  readonly session: { readonly ledger: readonly Entry[] };
  readonly runs: readonly { readonly record: Pick<RunRecord, 'id' | 'name'> }[];
};

type PlaceWords = {
  readonly parts: Readonly<Record<string, string>>;
  readonly entry: (number: number, title: string) => string;
  readonly newEntry: string;
  readonly run: (name: string) => string;
  readonly removed: string;
  readonly empty: string;
  readonly more: (signs: number) => string;
};

const words: Record<Language, PlaceWords> = {
  en: {
    parts: {
      name: 'Name of the session',
      car: 'Car',
      setup: 'Setup',
      conditions: 'Conditions',
      limits: 'Limits',
      ledger: 'Ledger',
      note: 'Note',
      privateNote: 'Private note',
      title: 'Title',
      change: 'What was changed',
      state: 'Kept or dropped',
      against: 'Compared with',
      runs: 'Runs',
      derivedChannels: 'Channels by formula',
      asTyped: 'As typed',
      columns: 'Columns',
      pullEdits: 'Pull edits',
      direction: 'Direction',
    },
    entry: (number, title) => `Entry ${number}, ${title}`,
    newEntry: 'An entry',
    run: (name) => `Run ${name}`,
    removed: 'removed',
    empty: 'empty',
    more: (signs) => ` … and ${signs} more characters`,
  },
  de: {
    parts: {
      name: 'Name der Sitzung',
      car: 'Auto',
      setup: 'Aufbau',
      conditions: 'Bedingungen',
      limits: 'Grenzen',
      ledger: 'Buch',
      note: 'Notiz',
      privateNote: 'Private Notiz',
      title: 'Titel',
      change: 'Was geändert wurde',
      state: 'Behalten oder verworfen',
      against: 'Verglichen mit',
      runs: 'Aufzeichnungen',
      derivedChannels: 'Kanäle aus Formeln',
      asTyped: 'Wie eingegeben',
      columns: 'Spalten',
      pullEdits: 'Bearbeitung der Züge',
      direction: 'Richtung',
    },
    entry: (number, title) => `Eintrag ${number}, ${title}`,
    newEntry: 'Ein Eintrag',
    run: (name) => `Aufzeichnung ${name}`,
    removed: 'entfernt',
    empty: 'leer',
    more: (signs) => ` … und ${signs} weitere Zeichen`,
  },
};

const longestValue = 300;

/**
 * Where two copies differ, in words as far as there are any: `Entry 3, Boost 1.00 to 1.10 bar: Note`. What has
 * no word of its own keeps its name in the file.
 */
export function conflictPlace(
  conflict: { readonly file: string; readonly path: string },
  parts: NamedParts | null,
  show: Show,
): string {
  const said = words[show.language];
  const runId = /^runs\/([^/]+)\//.exec(conflict.file)?.[1];
  const steps = conflict.path === '' ? [] : conflict.path.split('.');
  const front: string[] = [];
  if (runId !== undefined) {
    front.push(said.run(parts?.runs.find((r) => r.record.id === runId)?.record.name ?? runId));
  } else if (steps[0] === 'ledger' && steps.length > 1) {
    const ledger = parts?.session.ledger ?? [];
    const at = ledger.findIndex((entry) => entry.id === steps[1]);
    const entry = ledger[at];
    front.push(entry ? said.entry(at, entryTitle(entry, show)) : said.newEntry);
    steps.splice(0, 2);
  }
  const [first, ...rest] = steps;
  const tail = first === undefined ? [] : [[said.parts[first] ?? first, ...rest].join(', ')];
  return [...front, ...tail].join(': ');
}

/** One side's value, given as JSON text, short enough to be read; null is what that side had removed. */
export function conflictValue(json: string | null, show: Show): string {
  const said = words[show.language];
  if (json === null) return said.removed;
  const value: unknown = JSON.parse(json);
  if (value === null || value === '') return said.empty;
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  const over = text.length - longestValue;
  return over <= 0 ? text : `${text.slice(0, longestValue)}${said.more(over)}`;
}
