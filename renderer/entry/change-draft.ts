import type { Entry, EntryKind } from '../../core/session/index.ts';
import type { TypedValue } from '../../core/units/index.ts';

/** A change while it is written down. */
export type ChangeDraft = {
  readonly kind: EntryKind;
  readonly title: string;
  readonly from: TypedValue | null;
  readonly to: TypedValue | null;
  readonly where: string;
  readonly against: string | null;
};

export const emptyDraft: ChangeDraft = {
  kind: 'boost',
  title: '',
  from: null,
  to: null,
  where: '',
  against: null,
};

export function draftOf(entry: Entry): ChangeDraft {
  return {
    kind: entry.kind,
    title: entry.title,
    from: entry.change?.from ?? null,
    to: entry.change?.to ?? null,
    where: entry.change?.where ?? '',
    against: entry.against,
  };
}

/** The parts of an entry that a draft decides. */
export function entryPartOf(draft: ChangeDraft): Pick<Entry, 'kind' | 'title' | 'change' | 'against'> {
  const { kind, title, from, to, where, against } = draft;
  const hasChange = from !== null || to !== null || where !== '';
  return { kind, title: title.trim(), change: hasChange ? { from, to, where: where.trim() } : null, against };
}

export function newEntry(draft: ChangeDraft): Entry {
  return {
    ...entryPartOf(draft),
    id: `e-${crypto.randomUUID().slice(0, 13)}`,
    runs: [],
    state: 'kept',
    note: '',
    privateNote: '',
    createdAt: new Date().toISOString(),
    conditions: null,
  };
}
