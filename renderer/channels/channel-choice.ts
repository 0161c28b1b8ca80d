import type { RunSummary } from '../../core/contract/index.ts';
import { type DerivedChannel, type QuantityId, quantities } from '../../core/log/index.ts';
import type { ShownKind } from '../../core/units/index.ts';

/** One thing that logs recorded: a quantity, whatever its column is called, or a column of its own name. */
export type ChannelChoice = {
  readonly key: string;
  /** Null for a column that goes by its own name: unknown, by formula, or one more of a quantity. */
  readonly quantity: QuantityId | null;
  /** Header of the column, or of the first log that has the quantity. */
  readonly column: string;
  /** What the column stands for all the same. */
  readonly of: QuantityId | null;
  /** What its values are measured in; null for a column that nobody knows. */
  readonly kind: ShownKind | null;
};

/** What a tuner looks at first after a pull. */
const first: readonly QuantityId[] = ['boost', 'manifoldPressure', 'lambda', 'sparkAdvance'];
/** Panels that stay tall enough to be read while they scroll past a laptop's screen. */
export const mostChannels = 6;
const atFirst = 3;

/**
 * All channels of these runs, each once: quantities, then what goes by the name of its column. A log may have several
 * columns of a quantity, such as the exhaust gas of each cylinder: the surest is the quantity, the others are their
 * own.
 */
export function choicesOf(
  runs: readonly RunSummary[],
  derived: readonly Pick<DerivedChannel, 'name' | 'kind'>[],
): ChannelChoice[] {
  const found = new Map<string, ChannelChoice>();
  const byFormula = new Map(derived.map((d) => [d.name, d.kind]));
  for (const run of runs) {
    for (const { column, quantity } of run.columns) {
      if (quantity === 'time') continue;
      const isIt = quantity !== null && surestOf(run, quantity) === column;
      const key = isIt ? quantity : `column ${column}`;
      const kind = quantity === null ? (byFormula.get(column) ?? null) : quantities[quantity];
      if (!found.has(key))
        found.set(key, { key, quantity: isIt ? quantity : null, column, of: quantity, kind });
    }
  }
  const all = [...found.values()];
  return [...all.filter((c) => c.quantity !== null), ...all.filter((c) => c.quantity === null)];
}

/** What is shown before anybody chose. */
function firstChoice(choices: readonly ChannelChoice[]): string[] {
  const usual = first.filter((q) => choices.some((c) => c.quantity === q));
  const rest = choices.filter((c) => c.quantity !== 'engineSpeed').map((c) => c.key);
  return [...new Set([...usual, ...rest])].slice(0, atFirst);
}

/** What was chosen before, as far as these logs have it; where they have nothing of it, what is shown first. */
export function chosenOf(choices: readonly ChannelChoice[], kept: readonly string[] | null): string[] {
  const there = kept?.filter((key) => choices.some((c) => c.key === key)) ?? [];
  return there.length > 0 ? there : firstChoice(choices);
}

/** So many are offered at once: a log with hundreds of columns would push the plots out of reach. */
export const mostOffered = 40;

/**
 * The channels to offer: all of a usual log; of many those chosen and those whose name holds what was typed, the first
 * of them where nothing was. `left` counts the others that fit.
 */
export function offeredOf(
  choices: readonly ChannelChoice[],
  chosen: readonly string[],
  sought: string,
  nameOf: (choice: ChannelChoice) => string,
): { readonly offered: readonly ChannelChoice[]; readonly left: number } {
  if (choices.length <= mostOffered) return { offered: choices, left: 0 };
  const text = sought.trim().toLowerCase();
  const fitting = choices.filter((c) => !chosen.includes(c.key) && nameOf(c).toLowerCase().includes(text));
  const shown = new Set([...chosen, ...fitting.slice(0, mostOffered).map((c) => c.key)]);
  return {
    offered: choices.filter((c) => shown.has(c.key)),
    left: Math.max(0, fitting.length - mostOffered),
  };
}

/** The column of a run that holds a choice; one that stands for something else in this run is another. */
export function columnIn(
  run: RunSummary,
  choice: Pick<ChannelChoice, 'quantity' | 'column' | 'of'>,
): string | null {
  if (choice.quantity !== null) return surestOf(run, choice.quantity);
  return run.columns.find((c) => c.column === choice.column && c.quantity === choice.of)?.column ?? null;
}

/** The column of a log that surely holds a quantity, or the surest of several; null where there is none. */
export function surestOf(run: RunSummary, quantity: QuantityId): string | null {
  const fitting = run.columns.filter((c) => c.quantity === quantity);
  return fitting.sort((a, b) => b.confidence - a.confidence)[0]?.column ?? null;
}
