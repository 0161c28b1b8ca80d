import { tellingBytes } from '../../core/log/index.ts';
import type { Problem } from '../../core/result/index.ts';

/** What speaks against taking a file, from its first bytes: `tellingBytes` of them, or all. */
export type WhyNot = (head: Uint8Array, name: string) => Problem | null;

/** Something speaks against the file whose bytes pass. */
export class Unwanted extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.code);
    this.problem = problem;
  }
}

/** Keeps the first bytes of a file that passes until it can be told whether it is wanted; throws `Unwanted`. */
export class FirstBytes {
  readonly #whyNot: WhyNot | null;
  readonly #name: string;
  #head: Uint8Array | null;
  #length = 0;

  constructor(whyNot: WhyNot | null, name: string) {
    this.#whyNot = whyNot;
    this.#name = name;
    this.#head = whyNot && new Uint8Array(tellingBytes);
  }

  take(part: Uint8Array): void {
    if (!this.#head) return;
    const some = part.subarray(0, this.#head.length - this.#length);
    this.#head.set(some, this.#length);
    this.#length += some.length;
    if (this.#length === this.#head.length) this.end();
  }

  /** No more bytes come. */
  end(): void {
    if (!this.#head) return;
    const problem = this.#whyNot?.(this.#head.subarray(0, this.#length), this.#name) ?? null;
    this.#head = null;
    if (problem) throw new Unwanted(problem);
  }
}
