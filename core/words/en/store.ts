import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

const zipFaults = {
  path: 'its name leads out of the session or is not allowed on every system',
  link: 'it is a link and not a file',
  encrypted: 'it is encrypted',
  method: 'it is packed in a way that this program does not unpack',
  twice: 'the same name stands twice',
  overlap: 'it lies over another entry',
};

const versionFaults = {
  damaged: 'it is damaged',
  newer: 'a newer program wrote it',
  invalid: 'a field in it does not fit',
};

export const storeProblems: ProblemWordsOf<'store'> = {
  'store/missing': (f) => ({
    message: `There is nothing at ${f.path}.`,
    remedy: 'Check the name, or pick the file again.',
  }),
  'store/no-folder': (f) => ({
    message: `There is no folder ${f.path} to write into.`,
    remedy: 'Make the folder first, or choose another place.',
  }),
  'store/not-allowed': (f) => ({
    message: `This program may not write or read ${f.path}.`,
    remedy: 'Change the permissions, or copy the session to a folder of your own.',
  }),
  'store/disk-read-only': (f) => ({
    message: `The disk with ${f.path} is read-only: nothing can be written to it.`,
    remedy: 'Choose a place on another disk, or copy the session there and open the copy.',
  }),
  'store/disk-full': (f) => ({
    message: `The disk is full; ${f.path} was not written.`,
    remedy: 'Make room and do it again. What was saved before still stands.',
  }),
  'store/folder-gone': (f) => ({
    message: `${f.path} does not answer: the folder was removed, or its drive or share is gone.`,
    remedy: 'Connect the drive again and reopen the session. What was saved before is on it.',
  }),
  'store/name-too-long': (f) => ({
    message: `The path ${f.path} is too long for this disk.`,
    remedy: 'Use a shorter name, or a folder nearer to the top of the disk.',
  }),
  'store/disk-error': (f) => ({
    message: `The disk refused ${f.path} (${f.code}).`,
    remedy: 'Copy the session to another disk and open it there.',
  }),
  'store/not-a-plain-file': (f) => ({
    message: `${f.path} is a link or a device where a plain file belongs.`,
    remedy: 'Put the file itself there; links inside a session are not followed.',
  }),
  'store/is-a-folder': (f) => ({
    message: `${f.path} is a folder, not a file.`,
    remedy: 'Pick a file in it. A folder in the place of a file of the session has to be moved away.',
  }),
  'store/too-large': (f) => ({
    message: `${f.path} is far larger than such a file ever gets.`,
    remedy: 'Look at it in a text editor; it is probably not what its name says.',
  }),
  'store/bad-path': (f) => ({
    message: `${f.path} would lie outside its folder.`,
    remedy: 'Use a plain name without slashes.',
  }),
  'store/already-there': (f) => ({
    message: `Something stands at ${f.path} already.`,
    remedy: 'Choose another name, or open what is there.',
  }),
  'store/not-a-session': (f) => ({
    message: `${f.path} is not a session folder: it holds no session.json.`,
    remedy: 'Pick the folder that holds session.json, or make a new session.',
  }),
  'store/damaged': (f) => ({
    message: `${f.file} is damaged, and no earlier version in history can be read either.`,
    remedy:
      'Take the file from a backup. The logs in runs are untouched and can be imported into a new session.',
  }),
  'store/locked': (f, show) => ({
    message: `The session is open in another program (process ${f.pid} on ${f.host}, since ${show.moment(f.since)}).`,
    remedy: 'Close it there and open it here once more, or look at it here without changing it.',
  }),
  'store/lock-lost': () => ({
    message: 'Another program has taken this session over; nothing more is written from here.',
    remedy: 'Open the session again to see its present state.',
  }),
  'store/read-only': (f) => ({
    message: `${f.folder} is open for reading only.`,
    remedy: 'Close the other program, or copy the folder to a place you may write to.',
  }),
  'store/closed': (f) => ({
    message: `${f.folder} was closed.`,
    remedy: 'Open it again.',
  }),
  'store/changed-outside': (f) => ({
    message: `${f.file} was changed by another program while the session was open, so it was not overwritten.`,
    remedy: 'Open the session again to take the change over, then repeat your last edit.',
  }),
  'store/source-changing': (f) => ({
    message: `${f.name} was still being written while it was copied.`,
    remedy: 'Stop the logger, then import the file again.',
  }),
  'store/source-unreadable': (f) => ({
    message: `${f.path} could not be read to its end: its card, drive or share failed or is gone (${f.code}). Nothing of it was kept.`,
    remedy: 'Connect it again, or copy the file to this machine, then import it again.',
  }),
  'store/upload-broken': (f) => ({
    message: `${f.name} did not arrive whole; nothing of it was kept.`,
    remedy: 'Drop the file again.',
  }),
  'store/source-missing': (f) => ({
    message: `The log ${f.name} of run ${f.runId} is not in the session folder.`,
    remedy: 'Import the original file again: it goes back to its place.',
  }),
  'store/source-damaged': (f) => ({
    message: `The log ${f.name} of run ${f.runId} is no longer what was imported.`,
    remedy: 'Import the original file again: it takes its place, and the damaged copy is set aside.',
  }),
  'store/not-a-zip': (f) => ({
    message: `${f.name} is not a zip file, or it was cut off.`,
    remedy: 'Send or copy it again.',
  }),
  'store/zip-unsafe': (f) => ({
    message: `${f.name} was not unpacked: entry ${f.entry} is refused because ${zipFaults[f.why]}.`,
    remedy: 'Ask its sender for a zip made by this program. Nothing of it was kept.',
  }),
  'store/zip-too-large': (f) => ({
    message: `${f.name} would unpack to far more than a session holds.`,
    remedy: 'Ask its sender what it is. For a session this large, copy the folder itself.',
  }),
  'store/zip-no-session': (f) => ({
    message: `${f.name} holds no session.`,
    remedy: 'Pick a zip that has a session.json in it.',
  }),
  'store/zip-damaged': (f) => ({
    message: `${f.name} is damaged at ${f.entry}. Nothing of it was kept.`,
    remedy: 'Send or copy it again.',
  }),
  'store/other-session': (f) => ({
    message: `“${f.theirs}” is not a copy of “${f.mine}”, so the two cannot be merged.`,
    remedy: 'Open it beside this one, or import its logs.',
  }),
  'store/no-run': (f) => ({
    message: `The session folder holds no run ${f.runId}.`,
    remedy: 'Import the log again.',
  }),
  'store/no-version': (f) => ({
    message: `The session folder holds no earlier version ${f.file}.`,
    remedy: 'Read the list again; old versions of one day are thinned out.',
  }),
  'store/version-unusable': (f) => ({
    message: `${f.file} can't be opened: ${versionFaults[f.why]}.`,
    remedy: 'Take another version, or look at the file in a text editor.',
  }),
};

const listed = (fields: readonly string[]) =>
  fields.length <= 5 ? fields.join(', ') : `${fields.slice(0, 5).join(', ')} and ${fields.length - 5} more`;

const repairs = {
  history: 'The repair puts the last good version from history in its place.',
  'from-log': 'The repair makes it anew from the log beside it.',
  'import-again': 'Import the original log again and it goes back to its place.',
  'set-aside': 'The repair sets it aside; nothing else depends on it.',
  none: 'Take it from a backup.',
};

export const storeNotes: NoteWordsOf<'store'> = {
  'store/changed-outside': (f) =>
    f.fields.length === 0
      ? `${f.file} was written by another program; its content is taken as it stands.`
      : `${f.file} was changed by another program and is taken as it stands. Different: ${listed(f.fields)}.`,
  'store/restored': (f, show) =>
    f.to === null
      ? `${f.file} was missing; the version saved at ${show.moment(f.savedAt)} is in its place.`
      : `${f.file} was damaged. It now lies in ${f.to}, and the version saved at ${show.moment(f.savedAt)} is in its place.`,
  'store/set-aside': (f) => `${f.file} was damaged and now lies in ${f.to}.`,
  'store/damage-left': (f) =>
    `${f.file} is damaged. Nothing was moved, because the session is open for reading only.`,
  'store/import-finished': (f) => `The import of run ${f.runId} had been interrupted and is now complete.`,
  'store/import-discarded': (f) =>
    `An interrupted import (${f.name}) was removed; the original log is untouched. Import it again.`,
  'store/unfinished-removed': (f) =>
    f.files === 1
      ? 'One half-written file of an interrupted save was removed.'
      : `${f.files} half-written files of interrupted saves were removed.`,
  'store/migrated': (f) =>
    `The session was written by an older version of this program (format ${f.from}) and is now format ${f.to}. The original lies in ${f.original}.`,
  'store/lock-taken-over': (f, show) =>
    `The session had not been closed properly (process ${f.pid} on ${f.host}, since ${show.moment(f.since)}).`,
  'store/run-rebuilt': (f) =>
    `The record of run ${f.runId} was lost with all its versions and was made anew from its log: column corrections, pull edits and notes are gone.`,
  'store/source-missing': (f) =>
    `The log ${f.name} of run ${f.runId} is missing. Import the original again and it goes back to its place.`,
  'store/file-damaged': (f) => `${f.file} is damaged. ${repairs[f.repair]}`,
  'store/file-missing': (f) => `${f.file} is missing. ${repairs[f.repair]}`,
  'store/unfinished-found': (f) =>
    `${f.file} is left from an interrupted write; opening the session clears it up.`,
  'store/newer-run': (f) => `${f.file} was written by a newer program and was left alone.`,
  'store/unknown-file': (f) => `${f.file} is not part of a session; it was left alone.`,
  'store/no-second-copy': (f) => `${f.file} has no second copy in history yet; the next save makes one.`,
  'store/cache-unusable': (f) => `${f.file} is damaged or out of date; it is made anew when it is needed.`,
};
