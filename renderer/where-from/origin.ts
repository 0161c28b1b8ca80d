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

/** Of a kind of number: its inputs are told by name and unit. */
export function originOfCard(card: FormulaCard, show: Show): Origin {
  const { language } = show;
  return {
    formula: explainedFormula(card.formula, language),
    tex: null,
    inputs: card.inputs.map((i) => ({
      symbol: explainedFormula(i.symbol, language),
      text: `${explainedRemark(i.name, language)} [${explainedRemark(i.unit, language)}]`,
    })),
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
