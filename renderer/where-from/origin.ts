import type { FormulaCard } from '../../core/power/index.ts';
import type { Explanation } from '../../core/units/index.ts';
import { type Show, screenWords } from '../../core/words/index.ts';

/** Where a number comes from, ready to be read. */
export type Origin = {
  readonly formula: string;
  readonly tex: string | null;
  /** Symbol and what stands for it: a value with its unit, or what it means. */
  readonly inputs: readonly { readonly symbol: string; readonly text: string }[];
  readonly source: string;
  readonly valid: readonly string[];
};

/** Of a number that was worked out: its inputs carry values. */
export function originOf(explanation: Explanation, show: Show): Origin {
  const said = screenWords(show.language).whereFrom;
  return {
    formula: explanation.formula,
    tex: explanation.tex ?? null,
    inputs: explanation.inputs.map((i) => ({ symbol: i.symbol, text: show.quantity(i.value, i.kind) })),
    source: explanation.source,
    valid: explanation.validRange.map((r) =>
      said.from(r.symbol, show.quantity(r.from, r.kind), show.quantity(r.to, r.kind)),
    ),
  };
}

/** Of a kind of number: its inputs are told by name and unit. */
export function originOfCard(card: FormulaCard): Origin {
  return {
    formula: card.formula,
    tex: null,
    inputs: card.inputs.map((i) => ({ symbol: i.symbol, text: `${i.name} [${i.unit}]` })),
    source: card.source,
    valid: [card.validRange],
  };
}

/** The whole panel as plain text, to paste into a note or a message. */
export function originText(origin: Origin, show: Show): string {
  const said = screenWords(show.language).whereFrom;
  return [
    `${said.formula}: ${origin.formula}`,
    `${said.inputs}:`,
    ...origin.inputs.map((i) => `  ${i.symbol}: ${i.text}`),
    `${said.source}: ${origin.source}`,
    ...(origin.valid.length > 0 ? [`${said.valid}:`, ...origin.valid.map((v) => `  ${v}`)] : []),
  ].join('\n');
}
