/** A formula as checked: only these shapes exist, whatever the parser knows besides. */
export type Expression =
  | { readonly kind: 'constant'; readonly value: number }
  | { readonly kind: 'symbol'; readonly name: string }
  | { readonly kind: 'unary'; readonly operator: '-' | '+' | 'not'; readonly of: Expression }
  | {
      readonly kind: 'binary';
      readonly operator: BinaryOperator;
      readonly left: Expression;
      readonly right: Expression;
    }
  | { readonly kind: 'choice'; readonly test: Expression; readonly yes: Expression; readonly no: Expression }
  | { readonly kind: 'call'; readonly name: FunctionName; readonly of: readonly Expression[] };

export const binaryOperators = [
  '+',
  '-',
  '*',
  '/',
  '^',
  '<',
  '<=',
  '>',
  '>=',
  '==',
  '!=',
  'and',
  'or',
] as const;
export type BinaryOperator = (typeof binaryOperators)[number];

/** Every function with how many arguments it takes. */
export const functions = {
  abs: [1, 1],
  sqrt: [1, 1],
  exp: [1, 1],
  log: [1, 1],
  log10: [1, 1],
  sin: [1, 1],
  cos: [1, 1],
  tan: [1, 1],
  floor: [1, 1],
  ceil: [1, 1],
  round: [1, 1],
  min: [2, 8],
  max: [2, 8],
  /** Slope against time, per second. */
  rate: [1, 1],
  /** Mean over a window of time centred on each sample. */
  smooth: [2, 2],
} as const satisfies Record<string, readonly [number, number]>;
export type FunctionName = keyof typeof functions;

/** Every part directly inside another. */
export function partsOf(expression: Expression): readonly Expression[] {
  switch (expression.kind) {
    case 'unary':
      return [expression.of];
    case 'binary':
      return [expression.left, expression.right];
    case 'choice':
      return [expression.test, expression.yes, expression.no];
    case 'call':
      return expression.of;
    default:
      return [];
  }
}
