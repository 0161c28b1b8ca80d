export const importing = {
  title: 'Where do these logs belong?',
  file: 'Log',
  entry: 'Entry',
  toBaseline: 'Baseline',
  toNew: 'A new change',
  toNone: 'Decide later',
  import: 'Import',
  reading: (name: string) => `Reading ${name}`,
  imported: (name: string, pulls: number) =>
    pulls === 0
      ? `${name} is in. No full pull was found in it.`
      : `${name} is in, with ${pulls === 1 ? '1 pull' : `${pulls} pulls`}.`,
  duplicate: (name: string, entries: readonly number[]) =>
    entries.length > 1
      ? `${name} was imported before. Its pulls now count in the entries ${entries.join(' and ')}; undo takes them out of this one.`
      : `${name} was imported before; the copy that is there is used.`,
  failed: (name: string) => `${name} could not be imported.`,
  keptAsIs: 'A log is copied byte for byte and never changed.',
  columns: 'Columns',
  column: 'In the file',
  meaning: 'Read as',
  unit: 'Unit',
  why: 'Because',
  sure: 'sure',
  likely: 'likely',
  guess: 'a guess',
  byHand: 'by hand',
};
