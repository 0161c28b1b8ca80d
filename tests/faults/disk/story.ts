import { unwrap } from '../../../core/result/index.ts';
import {
  checkSession,
  closeSession,
  createSessionFolder,
  importLog,
  type OpenSession,
  openSession,
  readChannelCache,
  saveRun,
  saveSession,
  sha256,
  writeChannelCache,
} from '../../../electron/store/index.ts';
import type { ProcessView } from '../../../electron/store/process-view.ts';
import type { Chance } from '../../support/chance.ts';
import { moment, sampleSession } from '../../support/store-samples.ts';
import { PowerCut, type SimulatedDisk } from './simulated-disk.ts';

/** Names as cameras, loggers and people give them. */
const names: [string, ...string[]] = [
  'pull 1.csv',
  'Überholt – 3. Gang.CSV',
  '../../../etc/passwd',
  'C:\\logs\\con.csv',
  'a\u202egpj.csv',
  'log.csv ',
  '日本語 🏁.csv',
  '.hidden',
  '=1+1.csv',
  'x'.repeat(300),
  'nul',
  'line\nbreak.csv',
];

/** A text that may stand, and which one was acknowledged last. */
class Promised {
  #may = new Set<string>(['']);
  begin(text: string): void {
    this.#may.add(text);
  }
  acknowledge(text: string): void {
    this.#may = new Set([text]);
  }
  /** After looking, only what was found may stand. */
  holds(found: string | undefined): boolean {
    return found !== undefined && this.#may.has(found);
  }
}

/**
 * One program's life with one session on a simulated disk: it imports, edits, caches, closes and opens again, and
 * keeps book of what it was told is safe.
 */
export class Story {
  readonly disk: SimulatedDisk;
  readonly folder: string;
  readonly #chance: Chance;
  #open: OpenSession | null = null;
  #pid = 100;
  #turn = 0;
  readonly #imported = new Map<string, string>();
  readonly #runNotes = new Map<string, Promised>();
  readonly #sessionNote = new Promised();
  /** What went wrong, in words; empty at the end of a good life. */
  readonly lost: string[] = [];
  acknowledged = 0;

  private constructor(disk: SimulatedDisk, folder: string, chance: Chance) {
    this.disk = disk;
    this.folder = folder;
    this.#chance = chance;
  }

  static async begin(disk: SimulatedDisk, chance: Chance): Promise<Story> {
    disk.plant('/shop/sessions/readme.txt', new Uint8Array());
    const made = await createSessionFolder('/shop/sessions', sampleSession(), moment(0), disk.fs);
    const story = new Story(disk, unwrap(made), chance);
    await story.open();
    return story;
  }

  /** The clock of the machine; it may go backwards. */
  get #now(): string {
    return moment(this.#chance.int(0, 5000));
  }

  get #view(): ProcessView {
    const pid = this.#pid;
    return {
      self: async () => ({ host: 'laptop', boot: 'b', pid, started: String(pid) }),
      look: async (other) => (other === pid ? { started: String(pid) } : 'gone'),
    };
  }

  async open(): Promise<void> {
    const options = { now: this.#now, fs: this.disk.fs, view: this.#view };
    const opened = await openSession(this.folder, options);
    this.#open = opened.ok ? opened.value : null;
  }

  /** Some turns of work. A problem that is told is an answer; only what was told as done is counted on. */
  async work(turns: number): Promise<void> {
    for (let i = 0; i < turns; i++) {
      const open = this.#open;
      if (!open || this.#chance.share() < 0.1) {
        if (open) await closeSession(open);
        await this.open();
        continue;
      }
      await this.#turnOf(open);
    }
  }

  async #turnOf(open: OpenSession): Promise<void> {
    const text = `note ${++this.#turn}`;
    const runs = [...open.runs.values()];
    const [first, ...rest] = runs;
    const what = this.#chance.pick(['import', 'session', 'run', 'cache', 'again']);
    if (what === 'import' || !first) {
      const content = new TextEncoder().encode(
        `Time (s),Speed\n${`${text},1\n`.repeat(this.#chance.int(0, 40))}`,
      );
      await this.#import(open, content);
    } else if (what === 'again') {
      const known = this.disk
        .files(`${this.folder}/runs`)
        .get(this.#sourceOf(this.#chance.pick([first, ...rest]).record.id));
      if (known) await this.#import(open, known.slice());
    } else if (what === 'run') {
      const { record } = this.#chance.pick([first, ...rest]);
      const promise = this.#runNotes.get(record.id) ?? new Promised();
      this.#runNotes.set(record.id, promise);
      promise.begin(text);
      const saved = await saveRun(open, { ...record, note: text }, this.#now);
      if (saved.ok) promise.acknowledge(text);
      else this.#unlessDisk(saved.problems[0].code);
    } else if (what === 'cache') {
      const cache = { key: 'k', header: {}, arrays: [Float64Array.of(this.#turn)] };
      await writeChannelCache(open, this.#chance.pick([first, ...rest]).record.id, cache);
    } else {
      this.#sessionNote.begin(text);
      const saved = await saveSession(open, { ...open.session, note: text }, this.#now);
      if (saved.ok) this.#sessionNote.acknowledge(text);
      else this.#unlessDisk(saved.problems[0].code);
    }
  }

  #sourceOf(runId: string): string {
    return `${this.folder}/runs/${runId}/source.csv`;
  }

  async #import(open: OpenSession, content: Uint8Array): Promise<void> {
    const source = { name: this.#chance.pick(names), content };
    const imported = await importLog(open, source, {}, this.#now);
    if (imported.ok) this.#imported.set(imported.value.record.id, sha256(content));
    else this.#unlessDisk(imported.problems[0].code);
  }

  /** Nobody else touches the folder, so these answers would be wrong whatever the disk does. */
  #unlessDisk(code: string): void {
    if (['store/changed-outside', 'store/closed', 'store/no-run', 'store/damaged'].includes(code)) {
      this.lost.push(`told ${code} for no reason`);
    }
  }

  /** The program is gone, and with it what it held; the next one has another number. */
  async die(): Promise<void> {
    const open = this.#open;
    this.#open = null;
    this.#pid++;
    try {
      if (open) await closeSession(open);
    } catch (error) {
      if (!(error instanceof PowerCut)) throw error;
    }
  }

  /** Opens the session on a disk that works again and looks whether everything is there. */
  async lookAgain(mayHoldLeavings: boolean): Promise<void> {
    const open = this.#open;
    if (open) await closeSession(open);
    await this.open();
    const found = this.#open;
    if (!found || found.readOnly) {
      this.lost.push(`does not open: ${found?.readOnly?.code}`);
      return;
    }
    const expect = (isThere: boolean, what: string) => {
      this.acknowledged++;
      if (!isThere) this.lost.push(what);
    };
    expect(this.#sessionNote.holds(found.session.note), `session note is “${found.session.note}”`);
    this.#sessionNote.acknowledge(found.session.note);
    for (const [id, hash] of this.#imported) {
      const bytes = this.disk.files(`${this.folder}/runs`).get(this.#sourceOf(id));
      expect(bytes !== undefined && sha256(bytes) === hash && found.runs.has(id), `log of ${id}`);
    }
    for (const [id, promise] of this.#runNotes) {
      const note = found.runs.get(id)?.record.note;
      expect(promise.holds(note), `note of ${id} is “${note}”`);
      if (note !== undefined) promise.acknowledge(note);
    }
    for (const id of found.runs.keys()) await readChannelCache(found, id, 'k');
    const report = await checkSession(this.folder, { fs: this.disk.fs });
    if (!report.ok || !report.value.isSound) this.lost.push(`check: ${JSON.stringify(report)}`);
    const leavings = [...this.disk.files(this.folder).keys()].filter((path) => path.includes('.unfinished-'));
    if (!mayHoldLeavings && leavings.length > 0) this.lost.push(`leavings: ${leavings}`);
  }
}
