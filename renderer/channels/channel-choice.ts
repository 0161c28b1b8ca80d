import type { RunSummary } from '../../core/contract/index.ts';
import type { QuantityId } from '../../core/log/index.ts';

/** One thing that logs recorded: a quantity, whatever its column is called, or a column that nobody knows. */
export type ChannelChoice = {
  readonly key: string;
  readonly quantity: QuantityId | null;
  /** Header of an unknown column, or of the first log that has the quantity. */
  readonly column: string;
};

/** What a tuner looks at first after a pull. */
const first: readonly QuantityId[] = ['boost', 'manifoldPressure', 'lambda', 'sparkAdvance'];
/** Panels on a laptop's screen that can still be read. */
export const mostChannels = 4;
const atFirst = 3;

/** All channels of these runs, quantities before unknown columns, each once. */
export function choicesOf(runs: readonly RunSummary[]): ChannelChoice[] {
  const found = new Map<string, ChannelChoice>();
  for (const { columns } of runs) {
    for (const { column, quantity } of columns) {
      if (quantity === 'time') continue;
      const key = quantity ?? `column ${column}`;
      if (!found.has(key)) found.set(key, { key, quantity, column });
    }
  }
  const all = [...found.values()];
  return [...all.filter((c) => c.quantity !== null), ...all.filter((c) => c.quantity === null)];
}

/** What is shown before anybody chose. */
export function firstChoice(choices: readonly ChannelChoice[]): string[] {
  const usual = first.filter((q) => choices.some((c) => c.quantity === q));
  const rest = choices.filter((c) => c.quantity !== 'engineSpeed').map((c) => c.key);
  return [...new Set([...usual, ...rest])].slice(0, atFirst);
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

/** The column of a run that holds a choice: the surest one for a quantity. */
export function columnIn(run: RunSummary, choice: Pick<ChannelChoice, 'quantity' | 'column'>): string | null {
  const fitting = run.columns.filter((c) =>
    choice.quantity === null
      ? c.quantity === null && c.column === choice.column
      : c.quantity === choice.quantity,
  );
  return fitting.sort((a, b) => b.confidence - a.confidence)[0]?.column ?? null;
}
