import { evaluateFormula } from './evaluate-formula.ts';
import { type Expression, partsOf } from './expression.ts';

const oneSample = Float64Array.of(0);

/**
 * Whether every window of `smooth` is one time above zero: it is worked out before the samples, so that no channel may
 * stand in it.
 *
 * @param symbols  as evaluateFormula takes them
 */
export function hasFixedWindows(
  expression: Expression,
  symbols: ReadonlyMap<string, number | Float64Array>,
): boolean {
  if (!partsOf(expression).every((part) => hasFixedWindows(part, symbols))) return false;
  if (expression.kind !== 'call' || expression.name !== 'smooth') return true;
  const window = expression.of[1];
  if (!window || namesChannel(window, symbols)) return false;
  return (evaluateFormula(window, symbols, oneSample)[0] as number) > 0;
}

function namesChannel(expression: Expression, symbols: ReadonlyMap<string, number | Float64Array>): boolean {
  if (expression.kind === 'symbol') return typeof symbols.get(expression.name) !== 'number';
  return partsOf(expression).some((part) => namesChannel(part, symbols));
}
