/**
 * Every problem code and the facts it carries. Each area adds its own codes by declaration merging in its
 * `problems.ts`; `core/words` must then hold a sentence for each in every language, or nothing compiles.
 */
// biome-ignore lint/suspicious/noEmptyInterface: filled by declaration merging in each area's problems.ts
export interface ProblemFacts {}

/**
 * Every remark code (flag, reason, warning, advice, rule) and the facts it carries; filled like ProblemFacts
 * in each area's `notes.ts`.
 */
// biome-ignore lint/suspicious/noEmptyInterface: filled by declaration merging in each area's notes.ts
export interface NoteFacts {}

/** Where in the user's input a problem stands. `line` counts from 1, as an editor shows it. */
export type Where = {
  readonly file?: string;
  readonly line?: number;
  readonly column?: string;
  /** Path of a field in JSON, `car.mass_kg`. */
  readonly field?: string;
};

export type ProblemCode = keyof ProblemFacts;
export type NoteCode = keyof NoteFacts;

/** Something the world did wrong, as facts; `core/words` makes the sentence and the remedy. */
export type Problem<C extends ProblemCode = ProblemCode> = {
  [K in C]: { readonly code: K; readonly facts: ProblemFacts[K]; readonly where?: Where };
}[C];

/** Something worth saying that stops nothing, as facts. */
export type Note<C extends NoteCode = NoteCode> = {
  [K in C]: { readonly code: K; readonly facts: NoteFacts[K]; readonly where?: Where };
}[C];

export type Problems = readonly [Problem, ...Problem[]];

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: Problems };

/** A good answer. */
export function ok<T>(value: T): Result<T> {
  return { ok: true, value };
}

/** One or more problems, as the failing side of any Result. */
export function fail(...problems: [Problem, ...Problem[]]): {
  readonly ok: false;
  readonly problems: Problems;
} {
  return { ok: false, problems };
}

/** Fails with `problems` where there are any, else ok(value). Collects all faults of a file at once. */
export function okUnless<T>(problems: readonly Problem[], value: T): Result<T> {
  const [first, ...rest] = problems;
  return first ? fail(first, ...rest) : ok(value);
}

/**
 * The value, or a thrown Error naming the codes. For tests, scripts and places where a failure would be our
 * own mistake; never on input from outside.
 */
export function unwrap<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(result.problems.map((p) => `${p.code} ${JSON.stringify(p.facts)}`).join('; '));
}
