import type { Entry, EntryKind, TableChange } from '../../core/session/index.ts';
import type { TypedValue } from '../../core/units/index.ts';

/** A change while it is written down. */
export type ChangeDraft = {
  readonly kind: EntryKind;
  readonly title: string;
  readonly from: TypedValue | null;
  readonly to: TypedValue | null;
  readonly where: string;
  readonly against: string | null;
  /** Cells of a table of the engine control; null where it was made elsewhere. */
  readonly table: TableChange | null;
};

export const emptyDraft: ChangeDraft = {
  kind: 'boost',
  title: '',
  from: null,
  to: null,
  where: '',
  against: null,
  table: null,
};

export function draftOf(entry: Entry): ChangeDraft {
  return {
    kind: entry.kind,
    title: entry.title,
    from: entry.change?.from ?? null,
    to: entry.change?.to ?? null,
    where: entry.change?.where ?? '',
    against: entry.against,
    table: entry.change?.table ?? null,
  };
}

/** What is typed of a draft, in the order of its fields. */
export function textsOf({ title, from, to, where }: ChangeDraft): readonly string[] {
  return [title, where, `${from?.value ?? ''}`, `${to?.value ?? ''}`];
}

/** The parts of an entry that a draft decides. */
export function entryPartOf(draft: ChangeDraft): Pick<Entry, 'kind' | 'title' | 'change' | 'against'> {
  const { kind, title, from, to, where, against, table } = draft;
  const hasChange = from !== null || to !== null || where !== '' || table !== null;
  const change = hasChange ? { from, to, where: where.trim(), ...(table ? { table } : {}) } : null;
  return { kind, title: title.trim(), change, against };
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
