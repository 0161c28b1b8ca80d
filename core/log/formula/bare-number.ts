import { type Expression, partsOf } from './expression.ts';

/** What is reckoned as a plain number but written with a unit. */
export type Scale = 'share' | 'angle' | 'lambda';

/** Beyond these a number beside such a symbol is percent, degrees or a gauge's reading (common practice). */
const most: Readonly<Record<Scale, number>> = { share: 1.5, angle: Math.PI / 2, lambda: 4 };
const unitOf: Readonly<Record<Scale, string>> = { share: '%', angle: 'deg', lambda: 'AFR' };

/**
 * The first place where a share, an angle or a lambda is added to or compared with a number that lacks its unit,
 * `pedal > 90`, with what was meant, `90 %`; null where there is none.
 */
export function bareNumberIn(expression: Expression, scales: ReadonlyMap<string, Scale>): string | null {
  for (const [a, b, sign] of pairsOf(expression)) {
    const found = beside(a, b, sign, scales) ?? beside(b, a, sign, scales);
    if (found !== null) return found;
  }
  for (const part of partsOf(expression)) {
    const found = bareNumberIn(part, scales);
    if (found !== null) return found;
  }
  return null;
}

/** What is held against each other in a sum, a comparison or a choice of the larger. */
function pairsOf(expression: Expression): [Expression, Expression, string][] {
  if (expression.kind === 'call' && (expression.name === 'min' || expression.name === 'max')) {
    const [first, ...rest] = expression.of;
    return first ? rest.map((part) => [first, part, expression.name]) : [];
  }
  if (expression.kind !== 'binary' || ['*', '/', '^', 'and', 'or'].includes(expression.operator)) return [];
  return [[expression.left, expression.right, expression.operator]];
}

function beside(
  named: Expression,
  bare: Expression,
  sign: string,
  scales: ReadonlyMap<string, Scale>,
): string | null {
  const name = nameIn(named, scales);
  const number = numberOf(bare);
  const scale = name === null ? undefined : scales.get(name);
  if (name === null || number === null || !scale || Math.abs(number) <= most[scale]) return null;
  return `${name} ${sign} ${number} → ${number} ${unitOf[scale]}`;
}

function numberOf(expression: Expression): number | null {
  if (expression.kind === 'constant') return expression.value;
  if (expression.kind !== 'unary' || expression.operator === 'not') return null;
  const of = numberOf(expression.of);
  return of === null ? null : expression.operator === '-' ? -of : of;
}

/** The symbol whose scale an expression keeps: a product has a scale of its own. */
function nameIn(expression: Expression, scales: ReadonlyMap<string, Scale>): string | null {
  const isKept =
    expression.kind === 'unary' ||
    (expression.kind === 'binary' && (expression.operator === '+' || expression.operator === '-')) ||
    (expression.kind === 'call' && ['abs', 'min', 'max', 'smooth'].includes(expression.name));
  if (expression.kind === 'symbol') return scales.has(expression.name) ? expression.name : null;
  if (!isKept) return null;
  for (const part of partsOf(expression)) {
    const name = nameIn(part, scales);
    if (name !== null) return name;
  }
  return null;
}
