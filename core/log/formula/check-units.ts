import { fail, ok, type Result } from '../../result/index.ts';
import { bareNumberIn, type Scale } from './bare-number.ts';
import { combine, type Dimension, dimensionText, isSame, plain } from './dimension.ts';
import { type Expression, partsOf } from './expression.ts';

/** Where units don't fit, and what stands on both sides, as dimensionText has it; empty where `fault` says it all. */
type Fault = { readonly fault: string; readonly left: string; readonly right: string };
type Found = Dimension | Fault;

const seconds: Dimension = [0, 0, 1, 0];

function unequal(fault: string, left: Dimension, right: Dimension): Fault {
  return { fault, left: dimensionText(left), right: dimensionText(right) };
}

function isFault(found: Found): found is Fault {
  return 'fault' in found;
}

/**
 * What a formula is measured in, from what its symbols are. Sums and comparisons need equal units, exponents a
 * plain constant, logarithms and angles plain numbers.
 *
 * Shares, angles and lambda are plain numbers inside, 0.9 for 90 %: beside one of them a number that can only be
 * meant in its usual unit is a fault too, since `pedal > 90` would never be true and nobody would see why.
 *
 * @param scales  symbols that are a share, an angle or a lambda
 *
 * Errors: log/formula-symbol-unknown, log/formula-units naming both sides.
 */
export function checkUnits(
  expression: Expression,
  symbols: ReadonlyMap<string, Dimension>,
  scales: ReadonlyMap<string, Scale> = new Map(),
): Result<Dimension> {
  const unknown = firstUnknown(expression, symbols);
  if (unknown !== null) return fail({ code: 'log/formula-symbol-unknown', facts: { symbol: unknown } });
  const bare = bareNumberIn(expression, scales);
  if (bare !== null) return fail({ code: 'log/formula-units', facts: { detail: bare, left: '', right: '' } });
  const found = dimensionOfExpression(expression, symbols);
  if (!isFault(found)) return ok(found);
  const { fault: detail, left, right } = found;
  return fail({ code: 'log/formula-units', facts: { detail, left, right } });
}

function firstUnknown(expression: Expression, symbols: ReadonlyMap<string, Dimension>): string | null {
  if (expression.kind === 'symbol') return symbols.has(expression.name) ? null : expression.name;
  for (const part of partsOf(expression)) {
    const unknown = firstUnknown(part, symbols);
    if (unknown !== null) return unknown;
  }
  return null;
}

function allSame(parts: readonly Found[], what: string): Found {
  const [first = plain, ...rest] = parts;
  if (isFault(first)) return first;
  for (const part of rest) {
    if (isFault(part)) return part;
    if (!isSame(first, part)) return unequal(what, first, part);
  }
  return first;
}

function mustBePlain(found: Found, what: string): Found {
  if (isFault(found)) return found;
  return isSame(found, plain) ? plain : unequal(what, found, plain);
}

function dimensionOfExpression(expression: Expression, symbols: ReadonlyMap<string, Dimension>): Found {
  const inner = (part: Expression) => dimensionOfExpression(part, symbols);
  switch (expression.kind) {
    case 'constant':
      return plain;
    case 'symbol':
      return symbols.get(expression.name) ?? plain;
    case 'unary':
      return expression.operator === 'not' ? mustBePlain(inner(expression.of), 'not') : inner(expression.of);
    case 'choice': {
      const test = mustBePlain(inner(expression.test), '?');
      return isFault(test) ? test : allSame([inner(expression.yes), inner(expression.no)], '?:');
    }
    case 'binary':
      return ofBinary(expression, inner);
    case 'call':
      return ofCall(expression, inner);
  }
}

function ofBinary(
  { operator, left, right }: Extract<Expression, { kind: 'binary' }>,
  inner: (part: Expression) => Found,
): Found {
  const a = inner(left);
  const b = inner(right);
  if (isFault(a)) return a;
  if (isFault(b)) return b;
  switch (operator) {
    case '*':
      return combine(a, b, 1);
    case '/':
      return combine(a, b, -1);
    case '+':
    case '-':
      return allSame([a, b], operator);
    case '^': {
      const exponent = mustBePlain(b, '^');
      if (isFault(exponent)) return exponent;
      if (isSame(a, plain)) return plain;
      return right.kind === 'constant'
        ? combine(plain, a, right.value)
        : { fault: `${dimensionText(a)} ^ ?`, left: '', right: '' };
    }
    case 'and':
    case 'or':
      return allSame([mustBePlain(a, operator), mustBePlain(b, operator)], operator);
    default: {
      const same = allSame([a, b], operator);
      return isFault(same) ? same : plain;
    }
  }
}

function ofCall(
  { name, of }: Extract<Expression, { kind: 'call' }>,
  inner: (part: Expression) => Found,
): Found {
  const parts = of.map(inner);
  const [first = plain, second = plain] = parts;
  if (isFault(first)) return first;
  switch (name) {
    case 'abs':
      return first;
    case 'min':
    case 'max':
      return allSame(parts, name);
    case 'sqrt':
      return combine(plain, first, 0.5);
    case 'rate':
      return combine(first, seconds, -1);
    case 'smooth': {
      if (isFault(second)) return second;
      return isSame(second, seconds) ? first : unequal('smooth', second, seconds);
    }
    default:
      return mustBePlain(first, name);
  }
}
