import { parseSync } from 'oxc-parser';
import { units } from '../../core/units/index.ts';

export type WrittenUnit = { readonly file: string; readonly line: number; readonly text: string };

type Node = Readonly<Record<string, unknown>> & { readonly type: string; readonly start: number };
const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && typeof (value as { type?: unknown }).type === 'string';

/** Signs of units that no reader would take for a word; a lone `s`, `m`, `V` or `%` is left to the eye. */
const signs = [...new Set([...units.values()].map((u) => u.symbol))].filter(
  (s) => s.length > 1 && !['in', 'AFR', 'lb', 'cm', 'gal', 'min', 'ms'].includes(s),
);
const escaped = signs.map((s) => s.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&'));
/** A unit behind a number or behind what a template fills in. */
const behindNumber = new RegExp(`(?:\\d|#)[\\s\\u00a0]?(?:${escaped.join('|')})(?![\\p{L}\\d])`, 'u');
/** A unit in brackets or behind a comma, as a head of a column carries it. */
const inHead = new RegExp(`(?:, |\\(|\\[)(?:${escaped.join('|')})(?:$|[\\])])`, 'u');

/**
 * Where a source file writes a unit into a text, instead of asking `Show` for the reader's. A literal that is a
 * unit's id is data; a literal with a number and a unit in it is a text.
 */
export function writtenUnits(file: string, text: string): readonly WrittenUnit[] {
  const found: WrittenUnit[] = [];
  const look = (node: Node, said: string) => {
    if (behindNumber.test(said) || inHead.test(said))
      found.push({ file, line: text.slice(0, node.start).split('\n').length, text: said.trim() });
  };
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) for (const one of value) walk(one);
    if (!isNode(value)) return;
    if (value.type === 'ImportDeclaration') return;
    if ((value.type === 'Literal' || value.type === 'JSXText') && typeof value.value === 'string')
      look(value, value.value);
    if (value.type === 'TemplateLiteral') {
      const quasis = value.quasis as readonly { readonly value: { readonly cooked: string } }[];
      look(value, quasis.map((q) => q.value.cooked).join('#'));
    }
    for (const child of Object.values(value)) if (typeof child === 'object') walk(child);
  };
  walk(parseSync(file, text).program);
  return found;
}

/** Where a number becomes text with fixed digits past `Show`: `toFixed` that no `Number(...)` takes back. */
export function fixedDigits(file: string, text: string): readonly WrittenUnit[] {
  return text.split('\n').flatMap((line, i) => {
    const isShown =
      /\.(?:toFixed|toLocaleString|toPrecision)\(/.test(line) && !/Number\([^;]*\.to/.test(line);
    return isShown ? [{ file, line: i + 1, text: line.trim() }] : [];
  });
}
