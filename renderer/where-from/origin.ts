import type { FormulaCard } from '../../core/power/index.ts';
import type { Explanation } from '../../core/units/index.ts';
import {
  explainedFormula,
  explainedRemark,
  explainedSource,
  explainedTex,
  type Show,
  screenWords,
} from '../../core/words/index.ts';

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
  const { language } = show;
  const said = screenWords(language).whereFrom;
  const symbol = (text: string) => explainedFormula(text, language);
  const amount = (value: number, of: Pick<Explanation['inputs'][number], 'kind' | 'isDifference'>) =>
    of.isDifference
      ? show.span(value, of.kind)
      : of.kind === 'lambda' && show.units.gaugeScale !== null
        ? `${show.bare(value, 'lambda')}\u00a0${show.unit('lambda')}`
        : show.quantity(value, of.kind);
  return {
    formula: explainedFormula(explanation.formula, language),
    tex: explanation.tex === undefined ? null : explainedTex(explanation.tex, language),
    inputs: explanation.inputs.map((i) => ({ symbol: symbol(i.symbol), text: amount(i.value, i) })),
    source: explainedSource(explanation.source, language),
    valid: explanation.validRange.map((r) => said.from(symbol(r.symbol), amount(r.from, r), amount(r.to, r))),
  };
}

/** A symbol of a card with the value that it had. */
export type CardValue = { readonly symbol: string; readonly text: string };

/**
 * Of a kind of number: its inputs are told by name and unit, and by their values where these are known.
 *
 * @param values  of the card's own symbols, and of others that stand behind them
 */
export function originOfCard(card: FormulaCard, show: Show, values: readonly CardValue[] = []): Origin {
  const { language } = show;
  const symbol = (text: string) => explainedFormula(text, language);
  const named = card.inputs.map((input) => {
    const value = values.find((v) => v.symbol === input.symbol);
    const name = explainedRemark(input.name, language);
    return {
      symbol: symbol(input.symbol),
      text: value ? `${value.text}, ${name}` : `${name} [${explainedRemark(input.unit, language)}]`,
    };
  });
  const others = values.filter((v) => !card.inputs.some((i) => i.symbol === v.symbol));
  return {
    formula: symbol(card.formula),
    tex: null,
    inputs: [...named, ...others.map((v) => ({ symbol: symbol(v.symbol), text: v.text }))],
    source: explainedSource(card.source, language),
    valid: [explainedRemark(card.validRange, language)],
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
