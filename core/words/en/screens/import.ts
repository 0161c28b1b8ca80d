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
  /** A log that goes from one entry to another. */
  move: {
    open: 'Move',
    openOf: (log: string) => `Move ${log} to another entry`,
    title: (log: string) => `Move ${log}`,
    titleAll: 'Move logs to other entries',
    intro:
      'Columns, corrected pulls and notes of a log go with it. Every entry that gains or loses one is judged anew.',
    toNone: 'No entry',
    emptied: (entry: string) => `${entry} is left without a log.`,
    already: (log: string, entry: string) =>
      `${entry} holds ${log} already; its pulls will count there once.`,
    moved: (log: string, entry: string) => `${log} now counts in ${entry}.`,
    takenOut: (log: string) => `${log} counts in no entry now.`,
    movedMany: (n: number) => `${n} logs have moved.`,
    unplaced: (n: number) => (n === 1 ? '1 log counts in no entry.' : `${n} logs count in no entry.`),
    place: 'Choose an entry',
  },
};
