import type { Explanation } from '../../core/units/index.ts';
import { type Show, screenWords } from '../../core/words/index.ts';

/** The whole panel as plain text, to paste into a note or a message. */
export function explanationText(explanation: Explanation, show: Show): string {
  const said = screenWords(show.language).whereFrom;
  const inputs = explanation.inputs.map((i) => `  ${i.symbol} = ${show.quantity(i.value, i.kind)}`);
  const ranges = explanation.validRange.map(
    (r) => `  ${said.from(r.symbol, show.quantity(r.from, r.kind), show.quantity(r.to, r.kind))}`,
  );
  return [
    `${said.formula}: ${explanation.formula}`,
    `${said.inputs}:`,
    ...inputs,
    `${said.source}: ${explanation.source}`,
    ...(ranges.length > 0 ? [`${said.valid}:`, ...ranges] : []),
  ].join('\n');
}
