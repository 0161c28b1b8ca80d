import { fail, ok, type Result } from '../../result/index.ts';
import {
  type BinaryOperator,
  binaryOperators,
  type Expression,
  type FunctionName,
  functions,
} from './expression.ts';

/** Longer than any formula a person types, short enough that no parser chokes on it. */
export const longestFormula = 500;
const mostParts = 200;
const deepest = 40;

/** Text to the tree of mathjs. */
export type FormulaParser = (text: string) => ParsedNode;

/** mathjs takes longer to load than most logs to read, so it comes only where a session has a formula. */
export async function loadFormulaParser(): Promise<FormulaParser> {
  const { parse } = await import('mathjs/number');
  return (text) => parse(text) as unknown as ParsedNode;
}

/** A node of the parser's tree, as far as it is read here; which fields it has follows from its type. */
export type ParsedNode = {
  readonly type: string;
  readonly value?: unknown;
  readonly name?: string;
  readonly op?: string;
  readonly fn?: ParsedNode;
  readonly args?: readonly ParsedNode[];
  readonly content?: ParsedNode;
  readonly condition?: ParsedNode;
  readonly trueExpr?: ParsedNode;
  readonly falseExpr?: ParsedNode;
  readonly conditionals?: readonly string[];
  readonly params?: readonly ParsedNode[];
  toString(): string;
};

const comparisons: Readonly<Record<string, BinaryOperator>> = {
  smaller: '<',
  smallerEq: '<=',
  larger: '>',
  largerEq: '>=',
  equal: '==',
  unequal: '!=',
};

class Refused extends Error {
  readonly part: string;
  constructor(part: string) {
    super(part);
    this.part = part;
  }
}

class TooLarge extends Error {}

/**
 * A formula in usual notation, `airMassFlow / fuelFlow`, `max(boost - 20 kPa, 0 kPa)`, `rate(engineSpeed)`.
 *
 * mathjs only parses; nothing of it is ever evaluated. The tree is copied into shapes of our own, and whatever
 * has no such shape (assignments, properties, indexing, strings, matrices, other functions) is refused.
 *
 * Errors: log/formula-too-long, log/formula-too-large, log/formula-unreadable, log/formula-refused naming the part.
 */
export function parseFormula(text: string, parse: FormulaParser): Result<Expression> {
  if (text.length > longestFormula) {
    return fail({ code: 'log/formula-too-long', facts: { length: text.length, most: longestFormula } });
  }
  if (text.trim() === '') return fail({ code: 'log/formula-empty', facts: {} });
  let tree: ParsedNode;
  try {
    tree = parse(text);
  } catch (error) {
    // What the parser says about it is English and its own; the place is enough.
    const at = (error as { char?: number }).char ?? 1;
    return fail({ code: 'log/formula-unreadable', facts: { at, rest: text.slice(at - 1, at + 29).trim() } });
  }
  let parts = 0;
  const copy = (node: ParsedNode | undefined, depth: number): Expression => {
    if (++parts > mostParts || depth > deepest) throw new TooLarge();
    if (!node) throw new Refused(text.slice(0, 80));
    const inner = (child: ParsedNode | undefined) => copy(child, depth + 1);
    const { args = [], name = '' } = node;
    switch (node.type) {
      case 'ConstantNode':
        if (typeof node.value !== 'number' || !Number.isFinite(node.value))
          throw new Refused(node.toString());
        return { kind: 'constant', value: node.value };
      case 'SymbolNode':
        return { kind: 'symbol', name };
      case 'ParenthesisNode':
        return inner(node.content);
      case 'ConditionalNode':
        return {
          kind: 'choice',
          test: inner(node.condition),
          yes: inner(node.trueExpr),
          no: inner(node.falseExpr),
        };
      case 'OperatorNode':
        return operation(node.op ?? '', args, inner, node);
      case 'RelationalNode':
        return chain(node.conditionals ?? [], (node.params ?? []).map(inner), node);
      case 'FunctionNode': {
        const called = node.fn?.type === 'SymbolNode' ? (node.fn.name ?? '') : '';
        if (!isFunction(called)) throw new Refused(node.toString());
        const [least, most] = functions[called];
        if (args.length < least || args.length > most) throw new Refused(node.toString());
        return { kind: 'call', name: called, of: args.map(inner) };
      }
      default:
        throw new Refused(node.toString());
    }
  };
  try {
    return ok(copy(tree, 0));
  } catch (error) {
    if (error instanceof Refused)
      return fail({ code: 'log/formula-refused', facts: { part: error.part.slice(0, 80) } });
    if (error instanceof TooLarge)
      return fail({ code: 'log/formula-too-large', facts: { parts: mostParts, levels: deepest } });
    throw error;
  }
}

function isFunction(name: string): name is FunctionName {
  return Object.hasOwn(functions, name);
}

/** `a < b < c` as `a < b and b < c`. */
function chain(names: readonly string[], params: readonly Expression[], node: ParsedNode): Expression {
  return names
    .map((name, i): Expression => {
      const operator = comparisons[name];
      const left = params[i];
      const right = params[i + 1];
      if (!operator || !left || !right) throw new Refused(node.toString());
      return { kind: 'binary', operator, left, right };
    })
    .reduce((left, right) => ({ kind: 'binary', operator: 'and', left, right }));
}

function operation(
  operator: string,
  args: readonly ParsedNode[],
  inner: (node: ParsedNode | undefined) => Expression,
  node: ParsedNode,
): Expression {
  const [first, second] = args;
  if (args.length === 1 && first) {
    if (operator === '-' || operator === '+' || operator === 'not') {
      return { kind: 'unary', operator, of: inner(first) };
    }
    // A percent sign behind a number.
    if (operator === '%') {
      return { kind: 'binary', operator: '*', left: inner(first), right: { kind: 'constant', value: 0.01 } };
    }
  }
  const known = binaryOperators.find((o) => o === operator);
  if (args.length !== 2 || !known || !first || !second) throw new Refused(node.toString());
  return { kind: 'binary', operator: known, left: inner(first), right: inner(second) };
}
