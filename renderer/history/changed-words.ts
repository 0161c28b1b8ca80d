import type { ScreenWords, Show } from '../../core/words/index.ts';

const mostNamed = 4;

/**
 * Fields that differ, as a person knows them: by the label of the field where it has one, else by the part of the
 * session they belong to. Each is named once, the rest counted.
 */
export function changedWords(paths: readonly string[], { history, sheet }: ScreenWords, show: Show): string {
  const fields: Record<string, { label: string } | undefined> = sheet.fields;
  const areas: Record<string, string | undefined> = history.areas;
  const wordOf = (path: string): string => {
    const [area = '', index, part] = path.split('.');
    const label = fields[path]?.label;
    if (label) return label;
    // Typed values stand beside the values themselves and say nothing of their own.
    if (area === 'asTyped') return '';
    if (area !== 'ledger') return areas[area] ?? history.other;
    if (index === undefined || part === undefined) return history.ledgerOrder;
    const entry = history.entry(show.number(Number(index)));
    return part === 'note' || part === 'privateNote' ? `${entry}: ${history.note}` : entry;
  };
  const words = [...new Set(paths.map(wordOf))].filter((word) => word !== '');
  if (words.length === 0) return history.nothing;
  const named = words.slice(0, mostNamed).join(', ');
  return words.length > mostNamed ? `${named} ${history.more(words.length - mostNamed)}` : named;
}
