import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseSync } from 'oxc-parser';

/** A text of a "where from" as it stands in core; what a template fills in is `#`. */
export type ExplainedText = {
  readonly file: string;
  readonly part: 'formula' | 'tex' | 'symbol' | 'source' | 'validRange' | 'name' | 'unit';
  readonly text: string;
};

type Node = Readonly<Record<string, unknown>> & { readonly type: string };
const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string';

const parts = ['formula', 'tex', 'symbol', 'source', 'validRange', 'name', 'unit'] as const;
type Part = (typeof parts)[number];
const isPart = (name: unknown): name is Part => (parts as readonly unknown[]).includes(name);

/**
 * Every text in core that an explanation carries, read from the syntax of the files that make explanations, so
 * that one on a path no test walks is found too.
 */
export function explainedTexts(project: string): readonly ExplainedText[] {
  const core = join(project, 'core');
  return readdirSync(core, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts') && !path.startsWith('words'))
    .flatMap((path) => {
      const text = readFileSync(join(core, path), 'utf8');
      return /\b(Explanation|FormulaCard)\b/.test(text) ? textsOf(`core/${path}`, text) : [];
    });
}

/** The texts of one file. */
export function textsOf(file: string, text: string): readonly ExplainedText[] {
  const found: ExplainedText[] = [];
  const take = (value: unknown, part: Part): void => {
    if (!isNode(value)) return;
    if (value.type === 'Literal' && typeof value.value === 'string')
      found.push({ file, part, text: value.value });
    else if (value.type === 'TemplateLiteral') {
      found.push({ file, part, text: templateText(value, part === 'tex') });
      for (const filled of value.expressions as readonly unknown[]) take(filled, part);
    } else if (value.type === 'TaggedTemplateExpression') take(value.quasi, part);
    else if (value.type === 'ConditionalExpression')
      for (const branch of [value.consequent, value.alternate]) take(branch, part);
    else if (value.type === 'LogicalExpression' || value.type === 'BinaryExpression')
      for (const side of [value.left, value.right]) take(side, part);
  };
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) for (const one of value) walk(one);
    if (!isNode(value)) return;
    if (value.type === 'Property' && isNode(value.key)) {
      const name = value.key.name ?? value.key.value;
      if (isPart(name)) take(value.value, name);
    }
    // `const source = 'x'`, and a table of sources, `const limitSource = { knock: 'x' }`.
    if (
      value.type === 'VariableDeclarator' &&
      isNode(value.id) &&
      /(^s|S)ource$/.test(String(value.id.name))
    ) {
      take(value.init, 'source');
      if (isNode(value.init) && value.init.type === 'ObjectExpression')
        for (const one of value.init.properties as readonly Node[]) take(one.value, 'source');
    }
    // `of(id, formula, tex, inputs, source)`, the shorthand of the numbers of a strategy.
    if (value.type === 'CallExpression' && isNode(value.callee) && value.callee.name === 'of') {
      const given = value.arguments as readonly unknown[];
      if (given.length >= 4) {
        take(given[1], 'formula');
        take(given[2], 'tex');
        take(given[4], 'source');
      }
    }
    // `input('P', 'W', 'wheel power')` of a formula card.
    if (value.type === 'CallExpression' && isNode(value.callee) && value.callee.name === 'input') {
      const given = value.arguments as readonly unknown[];
      for (const [i, part] of (['symbol', 'unit', 'name'] as const).entries()) take(given[i], part);
    }
    for (const child of Object.values(value)) if (typeof child === 'object') walk(child);
  };
  walk(parseSync(file, text).program);
  return found;
}

function templateText(node: Node, isRaw: boolean): string {
  const quasis = node.quasis as readonly {
    readonly value: { readonly raw: string; readonly cooked: string };
  }[];
  return quasis.map((q) => (isRaw ? q.value.raw : q.value.cooked)).join('#');
}
