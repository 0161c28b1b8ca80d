import { cp, mkdir, readFile, rm, symlink, truncate, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Note, type Problem, unwrap } from '../../../core/result/index.ts';
import { EntrySchema } from '../../../core/session/index.ts';
import { metricUnits } from '../../../core/units/index.ts';
import { createShow, languages, noteText, problemText } from '../../../core/words/index.ts';
import {
  checkSession,
  closeSession,
  diskError,
  type FileSystem,
  importLog,
  nodeFileSystem,
  openSession,
  readSource,
  saveSession,
  writeChannelCache,
} from '../../../electron/store/index.ts';
import { contentsOf, editFile, flipBit } from '../../support/folder-contents.ts';
import { moment, newSessionFolder, opened, sampleLog, scratchFolder } from '../../support/store-session.ts';

const english = createShow('en', metricUnits);

/** What opening told, in code and sentence; in the other languages it can be said too. */
const told = (notes: readonly Note[]) => {
  for (const language of languages) {
    for (const note of notes) expect(noteText(note, createShow(language, metricUnits))).not.toBe('');
  }
  return notes.map((note) => [note.code, noteText(note, english)]);
};
const refusal = (problem: Problem) => {
  for (const language of languages) {
    const { message, remedy } = problemText(problem, createShow(language, metricUnits));
    expect(message && remedy).toBeTruthy();
  }
  return [problem.code, problemText(problem, english).message];
};

type Fixture = { readonly folder: string; readonly first: string; readonly second: string };

/** A session of two runs in one entry, the first with a cache; nothing is wrong with it yet. */
async function goodSession(): Promise<Fixture> {
  const folder = await newSessionFolder();
  const open = await opened(folder);
  const ids: string[] = [];
  for (const n of [1, 2]) {
    const source = { name: `log ${n}.csv`, content: sampleLog(n) };
    ids.push(unwrap(await importLog(open, source, {}, moment(n + 1))).record.id);
  }
  const [first = '', second = ''] = ids;
  unwrap(await writeChannelCache(open, first, { key: 'k', header: {}, arrays: [new Float64Array(8)] }));
  const runs = ids.map((runId) => ({ runId, from_s: null, to_s: null }));
  const ledger = open.session.ledger.map((entry) => ({ ...entry, runs }));
  unwrap(await saveSession(open, { ...open.session, ledger, note: 'dry' }, moment(5)));
  unwrap(await closeSession(open));
  return { folder, first, second };
}

const runPath = (f: Fixture, name: string) => join(f.folder, 'runs', f.first, name);
const anyId = /[a-z0-9]+(-[a-z0-9]+)*/.source;

type Case = {
  readonly name: string;
  readonly spoil: (f: Fixture) => Promise<unknown>;
  /** Code and sentence of each notice, in any order. */
  readonly opensWith: readonly (readonly [string, RegExp])[];
  /** Code and sentence of each damage that a check before opening finds. */
  readonly checkFinds: readonly (readonly [string, RegExp])[];
  readonly runsLeft?: number;
};

const restored = (file: string): [string, RegExp] => [
  'store/restored',
  new RegExp(
    `^${file} was damaged\\. It now lies in set-aside/\\S+, and the version saved at 14 Mar 2027, 10:0\\d UTC is in its place\\.$`,
  ),
];
const damaged = (file: string, what: string): [string, RegExp] => [
  'store/file-damaged',
  new RegExp(`^${file} is damaged\\. ${what}`),
];
const run = (name: string) => `runs/${anyId}/${name}`;

const cases: readonly Case[] = [
  {
    name: 'a flipped bit in session.json',
    spoil: (f) => flipBit(join(f.folder, 'session.json'), 60),
    opensWith: [restored('session\\.json')],
    checkFinds: [damaged('session\\.json', 'The repair puts the last good version')],
  },
  {
    name: 'session.json cut off',
    spoil: (f) => truncate(join(f.folder, 'session.json'), 100),
    opensWith: [restored('session\\.json')],
    checkFinds: [damaged('session\\.json', 'The repair puts the last good version')],
  },
  {
    name: 'session.json gone',
    spoil: (f) => rm(join(f.folder, 'session.json')),
    opensWith: [
      [
        'store/restored',
        /^session\.json was missing; the version saved at 14 Mar 2027, 10:\d\d UTC is in its place\.$/,
      ],
    ],
    checkFinds: [['store/file-missing', /^session\.json is missing\. The repair puts/]],
  },
  {
    name: 'a flipped bit in run.json',
    spoil: (f) => flipBit(runPath(f, 'run.json'), 60),
    opensWith: [restored(run('run\\.json'))],
    checkFinds: [damaged(run('run\\.json'), 'The repair puts the last good version')],
  },
  {
    name: 'run.json cut off',
    spoil: (f) => truncate(runPath(f, 'run.json'), 50),
    opensWith: [restored(run('run\\.json'))],
    checkFinds: [damaged(run('run\\.json'), 'The repair puts the last good version')],
  },
  {
    name: 'run.json of a newer program',
    spoil: (f) =>
      editFile(runPath(f, 'run.json'), (t) => t.replace('"schemaVersion": 1', '"schemaVersion": 7')),
    opensWith: [
      ['store/newer-run', /^runs\/\S+\/run\.json was written by a newer program and was left alone\.$/],
      ['store/file-missing', /^runs\/\S+ is missing\. Import the original log again/],
    ],
    checkFinds: [],
    runsLeft: 1,
  },
  {
    name: 'a flipped bit in a log',
    spoil: (f) => flipBit(runPath(f, 'source.csv'), 200),
    opensWith: [],
    checkFinds: [damaged(run('source\\.csv'), 'Import the original log again')],
  },
  {
    name: 'a log cut off',
    spoil: async (f) => {
      const bytes = await readFile(runPath(f, 'source.csv'));
      await rm(runPath(f, 'source.csv'), { force: true });
      await writeFile(runPath(f, 'source.csv'), bytes.subarray(0, 300));
    },
    opensWith: [],
    checkFinds: [damaged(run('source\\.csv'), 'Import the original log again')],
  },
  {
    name: 'a log gone',
    spoil: (f) => rm(runPath(f, 'source.csv'), { force: true }),
    opensWith: [
      ['store/source-missing', /^The log log 1\.csv of run \S+ is missing\. Import the original again/],
    ],
    checkFinds: [
      ['store/file-missing', /^runs\/\S+\/source\.csv is missing\. Import the original log again/],
    ],
  },
  {
    name: 'a flipped bit in the cache',
    spoil: (f) => flipBit(runPath(f, 'channels.bin'), 60),
    opensWith: [],
    checkFinds: [],
  },
  {
    name: 'a whole run gone',
    spoil: (f) => rm(join(f.folder, 'runs', f.first), { recursive: true, force: true }),
    opensWith: [
      ['store/file-missing', /^runs\/\S+ is missing\. Import the original log again and it goes back/],
    ],
    checkFinds: [['store/file-missing', /^runs\/\S+ is missing\. Import the original log again/]],
    runsLeft: 1,
  },
  {
    name: 'a run copied by hand, its id twice',
    spoil: (f) => cp(join(f.folder, 'runs', f.first), join(f.folder, 'runs', 'copied'), { recursive: true }),
    opensWith: [],
    checkFinds: [],
    runsLeft: 3,
  },
  {
    name: 'an entry copied by hand, its id twice',
    spoil: (f) =>
      editFile(join(f.folder, 'session.json'), (text) => {
        const json = JSON.parse(text);
        return JSON.stringify({ ...json, ledger: [...json.ledger, json.ledger[0]] });
      }),
    opensWith: [restored('session\\.json')],
    checkFinds: [damaged('session\\.json', 'The repair puts the last good version')],
  },
  {
    name: 'a field that does not fit, written by hand',
    spoil: (f) =>
      editFile(join(f.folder, 'session.json'), (t) => t.replace('"mass_kg": 1320', '"mass_kg": "heavy"')),
    opensWith: [restored('session\\.json')],
    checkFinds: [damaged('session\\.json', 'The repair puts the last good version')],
  },
  {
    name: 'an honest edit by hand',
    spoil: (f) =>
      editFile(join(f.folder, 'session.json'), (t) => t.replace('"note": "dry"', '"note": "damp"')),
    opensWith: [
      [
        'store/changed-outside',
        /^session\.json was changed by another program and is taken as it stands\. Different: note\.$/,
      ],
    ],
    checkFinds: [],
  },
  {
    name: 'a damaged version in history',
    spoil: async (f) => {
      const at = join(f.folder, 'history');
      const [name = ''] = Object.keys(await contentsOf(at)).sort();
      await flipBit(join(at, name), 60);
    },
    opensWith: [],
    checkFinds: [damaged('history/session-r\\S+', 'The repair sets it aside')],
  },
  {
    name: 'things that are no part of a session',
    spoil: async (f) => {
      await mkdir(join(f.folder, 'runs', 'Not An Id'));
      await symlink('/etc', join(f.folder, 'runs', 'elsewhere'));
    },
    opensWith: [
      ['store/unknown-file', /^runs\/Not An Id is not part of a session; it was left alone\.$/],
      ['store/unknown-file', /^runs\/elsewhere is not part of a session; it was left alone\.$/],
    ],
    checkFinds: [],
  },
];

const matches = (list: readonly (readonly [string, RegExp])[]) =>
  list.map(([code, sentence]) => [code, expect.stringMatching(sentence)]);

describe('a bad session opens, says what was wrong, and keeps the rest', () => {
  it.each(cases)('$name', async ({ spoil, opensWith, checkFinds, runsLeft = 2 }) => {
    const fixture = await goodSession();
    await spoil(fixture);
    const check = unwrap(await checkSession(fixture.folder));
    expect(told(check.damage).sort()).toEqual(matches(checkFinds));
    expect(check.isSound).toBe(checkFinds.length === 0);
    const open = await opened(fixture.folder, 9);
    expect(told(open.notices).sort()).toEqual(matches([...opensWith].sort((a, b) => (a[0] < b[0] ? -1 : 1))));
    expect(open.runs.size).toBe(runsLeft);
    expect(open.session.car.mass_kg).toBe(1320);
    expect(open.session.ledger[0]?.runs).toHaveLength(2);
    expect(Buffer.from(unwrap(await readSource(open, fixture.second)))).toEqual(Buffer.from(sampleLog(2)));
    // It can be worked with: an edit is taken and stands.
    unwrap(await saveSession(open, { ...open.session, note: 'worked on' }, moment(10)));
    unwrap(await closeSession(open));
    const again = await opened(fixture.folder, 11);
    expect(again.session.note).toBe('worked on');
    unwrap(await closeSession(again));
  });

  it('a damaged log is refused by its name when it is read', async () => {
    const fixture = await goodSession();
    await flipBit(runPath(fixture, 'source.csv'), 200);
    const open = await opened(fixture.folder, 9);
    const read = await readSource(open, fixture.first);
    expect(read.ok ? [] : refusal(read.problems[0])).toEqual([
      'store/source-damaged',
      `The log log 1.csv of run ${fixture.first} is no longer what was imported.`,
    ]);
    unwrap(await closeSession(open));
  });
});

/** A disk on which every writing operation fails in one way, or which does not answer at all. */
function disk(code: string, what: 'writing' | 'everything'): FileSystem {
  const refuse = async (path: string): Promise<never> => {
    throw diskError(code, path);
  };
  const writing = {
    createNew: refuse,
    makeFolder: refuse,
    rename: refuse,
    removeFile: refuse,
    touch: refuse,
  };
  const reading = { list: refuse, readFile: refuse, openRead: refuse, stat: refuse, syncFolder: refuse };
  return { ...nodeFileSystem, ...writing, ...(what === 'everything' ? reading : {}) } as FileSystem;
}

describe('what can not be opened is refused in a sentence, and nothing is touched', () => {
  const refused: readonly {
    readonly name: string;
    readonly make: (f: Fixture) => Promise<string>;
    readonly fs?: FileSystem;
    readonly says: readonly [string, RegExp];
  }[] = [
    {
      name: 'a session of a newer program',
      make: async (f) => {
        await editFile(join(f.folder, 'session.json'), (t) =>
          t.replace('"schemaVersion": 1', '"schemaVersion": 99'),
        );
        return f.folder;
      },
      says: [
        'session/newer-version',
        /^session\.json: This was written by a newer program \(version 99; this one knows 1\)\.$/,
      ],
    },
    {
      name: 'session.json and its history beyond repair',
      make: async (f) => {
        await writeFile(join(f.folder, 'session.json'), 'junk');
        await rm(join(f.folder, 'history'), { recursive: true });
        return f.folder;
      },
      says: [
        'store/damaged',
        /^session\.json is damaged, and no earlier version in history can be read either\.$/,
      ],
    },
    {
      name: 'a session.json from a script with a field that does not fit',
      make: async () => {
        const folder = await scratchFolder();
        await writeFile(join(folder, 'session.json'), '{"schemaVersion": 1, "id": "x", "name": 3}');
        return folder;
      },
      says: ['session/field-invalid', /^session\.json, name: “name” can't be used: /],
    },
    {
      name: 'a session.json without a version',
      make: async () => {
        const folder = await scratchFolder();
        await writeFile(join(folder, 'session.json'), '{"name": "x"}');
        return folder;
      },
      says: ['session/no-version', /^session\.json: This is no session: it has no schemaVersion\.$/],
    },
    {
      name: 'a folder of something else',
      make: async () => {
        const folder = await scratchFolder();
        await writeFile(join(folder, 'holiday.txt'), 'x');
        return folder;
      },
      says: ['store/not-a-session', /^\S+ is not a session folder: it holds no session\.json\.$/],
    },
    {
      name: 'a folder that is not there',
      make: async (f) => join(f.folder, 'nowhere'),
      says: ['store/missing', /^There is nothing at .+nowhere\.$/],
    },
    {
      name: 'a file where the folder belongs',
      make: async (f) => join(f.folder, 'session.json'),
      says: ['store/not-a-session', /^.+session\.json is not a session folder: it holds no session\.json\.$/],
    },
    {
      name: 'a share that went away',
      make: async (f) => f.folder,
      fs: disk('ENOTCONN', 'everything'),
      says: [
        'store/folder-gone',
        /does not answer: the folder was removed, or its drive or share is gone\.$/,
      ],
    },
  ];

  it.each(refused)('$name', async ({ make, fs, says }) => {
    const fixture = await goodSession();
    const folder = await make(fixture);
    const before = await contentsOf(fixture.folder);
    const result = await openSession(folder, { now: moment(9), ...(fs ? { fs } : {}) });
    expect(result.ok ? [] : refusal(result.problems[0])).toEqual([says[0], expect.stringMatching(says[1])]);
    expect(await contentsOf(fixture.folder)).toEqual(before);
  });
});

describe('what can only be read opens for reading and says why', () => {
  it.each([
    ['a write-protected folder', 'EACCES', 'store/not-allowed', /^This program may not write or read /],
    ['a write-protected disk', 'EROFS', 'store/disk-read-only', /^The disk with .+ is read-only: /],
    ['a full disk', 'ENOSPC', 'store/disk-full', /^The disk is full; /],
  ] as const)('%s', async (_, failure, code, sentence) => {
    const { folder } = await goodSession();
    const before = await contentsOf(folder);
    const open = unwrap(await openSession(folder, { now: moment(9), fs: disk(failure, 'writing') }));
    expect(open.readOnly && refusal(open.readOnly)).toEqual([code, expect.stringMatching(sentence)]);
    expect(open.runs.size).toBe(2);
    const edit = await saveSession(open, { ...open.session, note: 'x' }, moment(10));
    expect(edit.ok ? '' : edit.problems[0].code).toBe(code);
    unwrap(await closeSession(open));
    expect(await contentsOf(folder)).toEqual(before);
  });

  it('a session that another program has open', async () => {
    const { folder } = await goodSession();
    const holder = await opened(folder, 9);
    const open = unwrap(await openSession(folder, { now: moment(10) }));
    expect(open.readOnly && refusal(open.readOnly)).toEqual([
      'store/locked',
      expect.stringMatching(
        new RegExp(
          `^The session is open in another program \\(process ${process.pid} on .+, since 14 Mar 2027, 10:09 UTC\\)\\.$`,
        ),
      ),
    ]);
    unwrap(await closeSession(open));
    unwrap(await closeSession(holder));
  });
});

/** A share on which the next reading of each of these paths finds nothing. */
function hiccup(paths: readonly string[]): FileSystem {
  const once = new Set(paths);
  const gone = (path: string) => {
    if (once.delete(path)) throw diskError('ENOENT', path);
  };
  return {
    ...nodeFileSystem,
    readFile: async (path, limit) => {
      gone(path);
      return nodeFileSystem.readFile(path, limit);
    },
    list: async (path) => {
      gone(path);
      return nodeFileSystem.list(path);
    },
  };
}

describe('a share that shows nothing for a moment', () => {
  it('loses no note of a run', async () => {
    const fixture = await goodSession();
    const before = await readFile(runPath(fixture, 'run.json'));
    const fs = hiccup([runPath(fixture, 'run.json'), runPath(fixture, 'history')]);
    const open = unwrap(await openSession(fixture.folder, { now: moment(9), fs }));
    expect(open.notices).toEqual([]);
    expect(open.runs.size).toBe(2);
    unwrap(await closeSession(open));
    expect(await readFile(runPath(fixture, 'run.json'))).toEqual(before);
  });

  it('brings no older session.json over one that was edited by hand', async () => {
    const { folder } = await goodSession();
    const path = join(folder, 'session.json');
    await editFile(path, (t) => t.replace('"note": "dry"', '"note": "damp"'));
    const result = await openSession(folder, { now: moment(9), fs: hiccup([path]) });
    expect(result.ok ? '' : result.problems[0].code).toBe('store/folder-gone');
    const open = await opened(folder, 10);
    expect(open.session.note).toBe('damp');
    unwrap(await closeSession(open));
  });
});

describe('odd and still whole', () => {
  it('a clock that went backwards between two saves loses neither', async () => {
    const { folder } = await goodSession();
    const open = await opened(folder, 30);
    unwrap(await saveSession(open, { ...open.session, note: 'late' }, moment(30)));
    unwrap(await saveSession(open, { ...open.session, note: 'later, by a clock set back' }, moment(2)));
    unwrap(await closeSession(open));
    await flipBit(join(folder, 'session.json'), 60);
    const again = await opened(folder, 3);
    expect(again.session.note).toBe('later, by a clock set back');
    unwrap(await closeSession(again));
  });

  it.each([
    '../../etc',
    'CON',
    'a/b\\c:d*e?"<f>|g',
    '  .hidden. ',
    'Über-Straße 🏁 \u202Etxt.exe',
    '<script>alert(1)</script>',
    '=HYPERLINK("x")',
    '\u0000\n\t',
    'x'.repeat(200),
  ])('the name %j is kept, opens again, and stays in its folder', async (name) => {
    const folder = await newSessionFolder(name);
    const open = await opened(folder);
    expect(open.session.name).toBe(name);
    const entry = EntrySchema.parse({
      id: 'e',
      kind: 'other',
      title: name,
      note: name,
      createdAt: moment(2),
    });
    unwrap(await saveSession(open, { ...open.session, ledger: [...open.session.ledger, entry] }, moment(2)));
    const log = unwrap(await importLog(open, { name, content: sampleLog(1) }, {}, moment(3))).record;
    unwrap(await closeSession(open));
    const again = await opened(folder, 4);
    expect([again.session.ledger[1]?.title, again.runs.get(log.id)?.record.name]).toEqual([
      name,
      // A file is called by the last part of what it came as.
      name.split(/[\\/]/).at(-1),
    ]);
    expect(unwrap(await checkSession(folder))).toMatchObject({ isSound: true, damage: [] });
    unwrap(await closeSession(again));
  });
});
