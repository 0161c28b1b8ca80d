import { ok, type Problem, type Result } from '../result/index.ts';
import type { Log } from './channel.ts';
import type { LogReader, LogReaderOptions } from './log-reader.ts';
import { type OtherForm, otherFormOf, rewritten } from './rewrite/rewritten.ts';
import type { BlockStyle, RowBlock } from './table/row-block.ts';
import { longestLine } from './table/settle-table.ts';

/** No more of a log in another form is held in memory: written anew it takes some twenty times that (measured). */
const mostHeld_bytes = 64 * 1024 * 1024;

/**
 * Reads a plain table as it comes, and a log in another form (a table in a web page, JSON, a table on its side) once it
 * is whole, written anew as a plain table. What cannot be written anew is refused for what it is. Lines that notes and
 * problems name are then those of the plain table.
 */
export class RewritingReader implements LogReader {
  readonly #options: LogReaderOptions;
  readonly #makePlain: (options: LogReaderOptions) => LogReader;
  readonly #plain: LogReader;
  /** What was pushed: its beginning until the plain reader has made up its mind, all of it in another form. */
  #held: Uint8Array[] = [];
  #size = 0;
  #refused: { readonly problem: Problem; readonly form: OtherForm } | null = null;

  constructor(options: LogReaderOptions, makePlain: (options: LogReaderOptions) => LogReader) {
    this.#options = options;
    this.#makePlain = makePlain;
    this.#plain = makePlain(options);
  }

  push(chunk: Uint8Array): Problem | null {
    if (this.#refused) {
      this.#hold(chunk);
      return this.#size > mostHeld_bytes ? this.#refused.problem : null;
    }
    if (this.#size <= longestLine) this.#hold(chunk);
    else this.#held = [];
    const problem = this.#plain.push(chunk);
    const form = problem && otherFormOf(problem);
    if (!form || rewritten(form, this.#all()) === null) return problem;
    this.#refused = { problem, form };
    return null;
  }

  blockStyle(): BlockStyle | null {
    return this.#refused ? null : this.#plain.blockStyle();
  }

  pushBlock(block: RowBlock): Problem | null {
    return this.#plain.pushBlock(block);
  }

  finish(): Result<Log> {
    if (this.#refused) return this.#finishAs(this.#refused.form, this.#refused.problem);
    const read = this.#plain.finish();
    const form = read.ok ? null : otherFormOf(read.problems[0]);
    return read.ok || !form ? read : this.#finishAs(form, read.problems[0]);
  }

  #hold(chunk: Uint8Array): void {
    this.#size += chunk.length;
    // The chunk is the caller's, who may fill it anew.
    this.#held.push(chunk.slice());
  }

  #all(): Uint8Array {
    const [only] = this.#held;
    if (only && this.#held.length === 1) return only;
    const all = new Uint8Array(this.#held.reduce((sum, { length }) => sum + length, 0));
    let at = 0;
    for (const chunk of this.#held) {
      all.set(chunk, at);
      at += chunk.length;
    }
    return all;
  }

  #finishAs(form: OtherForm, problem: Problem): Result<Log> {
    const table = rewritten(form, this.#all());
    if (table === null) return { ok: false, problems: [problem] };
    const reader = this.#makePlain({ ...this.#options, size: table.length });
    const early = reader.push(table);
    const read: Result<Log> = early ? { ok: false, problems: [early] } : reader.finish();
    if (!read.ok) return read;
    const log = read.value;
    return ok({ ...log, warnings: [{ code: 'log/rewritten', facts: { form } }, ...log.warnings] });
  }
}
