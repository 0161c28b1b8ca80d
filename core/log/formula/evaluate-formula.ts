import type { Span } from '../span.ts';
import type { BinaryOperator, Expression, FunctionName } from './expression.ts';

/** A number for all samples, or one per sample. */
type Value = number | Float64Array;

const binary: Readonly<Record<BinaryOperator, (a: number, b: number) => number>> = {
  '+': (a, b) => a + b,
  '-': (a, b) => a - b,
  '*': (a, b) => a * b,
  '/': (a, b) => a / b,
  '^': (a, b) => a ** b,
  '<': (a, b) => truth(a < b, a, b),
  '<=': (a, b) => truth(a <= b, a, b),
  '>': (a, b) => truth(a > b, a, b),
  '>=': (a, b) => truth(a >= b, a, b),
  '==': (a, b) => truth(a === b, a, b),
  '!=': (a, b) => truth(a !== b, a, b),
  and: (a, b) => truth(a !== 0 && b !== 0, a, b),
  or: (a, b) => truth(a !== 0 || b !== 0, a, b),
};

/** A comparison with a gap is a gap, not a no. */
function truth(claim: boolean, a: number, b: number): number {
  if (Number.isNaN(a) || Number.isNaN(b)) return Number.NaN;
  return claim ? 1 : 0;
}

const oneByOne: Partial<Readonly<Record<FunctionName, (a: number) => number>>> = {
  abs: Math.abs,
  sqrt: Math.sqrt,
  exp: Math.exp,
  log: Math.log,
  log10: Math.log10,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  floor: Math.floor,
  ceil: Math.ceil,
  round: Math.round,
};

const at = (value: Value, i: number) => (typeof value === 'number' ? value : (value[i] as number));

function eachSample(length: number, values: readonly Value[], of: (i: number) => number): Value {
  if (values.every((v) => typeof v === 'number')) return of(0);
  const out = new Float64Array(length);
  for (let i = 0; i < length; i++) out[i] = of(i);
  return out;
}

/**
 * A checked formula over samples, SI in and SI out. A gap in any input is a gap in the answer, and so is what has
 * no finite value.
 *
 * @param symbols  channels of the length of `time`, or plain numbers (units)
 * @param time     [s], rising inside a segment
 * @param segments  no slope and no mean reaches across from one to the next
 * @returns        one number per sample
 */
export function evaluateFormula(
  expression: Expression,
  symbols: ReadonlyMap<string, Value>,
  time: Float64Array,
  segments: readonly Span[] = [{ from: 0, to: time.length }],
): Float64Array {
  const length = time.length;
  const inner = (part: Expression): Value => {
    switch (part.kind) {
      case 'constant':
        return part.value;
      case 'symbol':
        return symbols.get(part.name) ?? Number.NaN;
      case 'unary': {
        const of = inner(part.of);
        const sign = part.operator === '-' ? -1 : 1;
        return eachSample(length, [of], (i) => {
          const v = at(of, i);
          return part.operator === 'not' ? truth(v === 0, v, v) : sign * v;
        });
      }
      case 'binary': {
        const left = inner(part.left);
        const right = inner(part.right);
        const apply = binary[part.operator];
        return eachSample(length, [left, right], (i) => apply(at(left, i), at(right, i)));
      }
      case 'choice': {
        const test = inner(part.test);
        const yes = inner(part.yes);
        const no = inner(part.no);
        return eachSample(length, [test, yes, no], (i) => {
          const t = at(test, i);
          return Number.isNaN(t) ? Number.NaN : at(t !== 0 ? yes : no, i);
        });
      }
      case 'call':
        return call(part.name, part.of.map(inner));
    }
  };
  const call = (name: FunctionName, values: readonly Value[]): Value => {
    const [first = Number.NaN, second = Number.NaN] = values;
    const single = oneByOne[name];
    if (single) return eachSample(length, [first], (i) => single(at(first, i)));
    if (name === 'min' || name === 'max') {
      const of = name === 'min' ? Math.min : Math.max;
      return eachSample(length, values, (i) => of(...values.map((v) => at(v, i))));
    }
    if (typeof first === 'number') return name === 'rate' ? 0 : first;
    const out = new Float64Array(length);
    for (const { from, to } of segments) {
      const [part, times] = [first.subarray(from, to), time.subarray(from, to)];
      out.set(name === 'rate' ? slope(part, times) : movingMean(part, times, at(second, 0)), from);
    }
    return out;
  };
  const result = inner(expression);
  const out = typeof result === 'number' ? new Float64Array(length).fill(result) : result;
  return out.map((v) => (Number.isFinite(v) ? v : Number.NaN));
}

/** Central difference; one-sided at the ends and beside gaps, NaN where time stands or runs back. */
function slope(values: Float64Array, time: Float64Array): Float64Array {
  return values.map((_, i) => {
    const from = i > 0 && Number.isFinite(values[i - 1] as number) ? i - 1 : i;
    const to = i + 1 < values.length && Number.isFinite(values[i + 1] as number) ? i + 1 : i;
    const span = (time[to] as number) - (time[from] as number);
    return span > 0 ? ((values[to] as number) - (values[from] as number)) / span : Number.NaN;
  });
}

/** A number so many times larger than what it leaves behind takes its digits along: the sum is then taken anew. */
const swallows = 1e9;

/** Mean of the finite samples within half a window either side; running sums, so any window costs the same. */
function movingMean(values: Float64Array, time: Float64Array, window: number): Float64Array {
  const half = Math.max(0, window) / 2;
  const out = new Float64Array(values.length);
  let from = 0;
  let to = 0;
  let sum = 0;
  let count = 0;
  const take = (i: number, sign: 1 | -1) => {
    const v = values[i] as number;
    if (!Number.isFinite(v)) return;
    sum += sign * v;
    count += sign;
    if (sign > 0 || Math.abs(v) <= swallows * Math.abs(sum)) return;
    sum = 0;
    for (let k = i + 1; k < to; k++) if (Number.isFinite(values[k])) sum += values[k] as number;
  };
  for (let i = 0; i < values.length; i++) {
    const now = time[i] as number;
    while (to < values.length && (time[to] as number) <= now + half) take(to++, 1);
    while (from < to && (time[from] as number) < now - half) take(from++, -1);
    out[i] = count > 0 ? sum / count : Number.NaN;
  }
  return out;
}
