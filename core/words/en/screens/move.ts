/** Taking a session to another machine, and bringing two copies of it together. */
export const move = {
  pack: 'Pack into a zip',
  packTitle: 'Pack this session into a zip',
  packWhy: 'Every log, entry and earlier version goes along, each with its checksum. Nothing here changes.',
  zipPath: 'Zip to write, on this machine',
  packNow: 'Pack',
  packing: 'Packing',
  packed: (files: number) => `Packed: ${files} files.`,
  sum: 'SHA-256 of the zip',
  sumWhy: 'The other machine shows the same line when the zip arrived whole.',

  unpack: 'Open a zip',
  unpackTitle: 'Open a zipped session',
  unpackWhy:
    'It is unpacked to a folder of its own, and only if every file in it fits its checksum. Nothing that is there already is replaced.',
  zipToOpen: 'Zip on this machine',
  into: 'Folder to unpack into',
  unpackNow: 'Unpack',
  unpacked: (files: number, checked: number) =>
    checked > 0
      ? `${checked} of ${files} files fit the checksums in the zip.`
      : `${files} files. The zip brings no list of checksums.`,
  unpacking: 'Unpacking',

  merge: 'Merge another copy',
  mergeTitle: 'Merge another copy of this session',
  mergeWhy:
    'For a session that was worked on in two places. Logs and entries of both are kept. The other copy is only read.',
  otherPath: 'Folder or zip of the other copy',
  mergeNow: 'Merge',
  merging: 'Merging',
  newRuns: (names: readonly string[]) =>
    names.length === 0 ? 'No log was missing here.' : `Taken over: ${names.join(', ')}.`,
  agreed: 'Nothing was changed in two ways.',
  twoWays: (n: number) =>
    n === 1 ? 'One thing was changed in two ways' : `${n} things were changed in two ways`,
  twoWaysWhy:
    'This copy’s value stands. Both are kept in the history folder, and you can take the other at any time.',
  order: 'Both copies added to it. All of it is there, this copy’s first.',
  here: 'Here',
  copy: 'Other copy',
  take: 'Take this',
  takeOf: (side: string, place: string) => `Take “${side}” for ${place}`,
  stands: 'Stands',
  other: 'It was edited since; both values are still here.',
  gone: 'What it stood in is no longer in the session.',

  aside: 'Look at it',
  asideTitle: 'The file that was set aside',
  asideWhy:
    'It no longer fits its seal: either it was damaged, or somebody edited a few signs of it by hand. If you know the edit, take it. Undo brings the present state back.',
  differs: 'It differs from the session in',
  differsNot: 'It says the same as the session.',
  asideTake: 'Take it after all',
};
