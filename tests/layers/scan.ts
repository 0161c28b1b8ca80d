import { isIdentifier, parse, type SyntaxNode, walk } from './import-graph.ts';

/**
 * Every use of a clock or of chance in a source file, as `path:line what`. Time and chance come into core as
 * arguments, so that the same input always gives the same answer.
 */
export function clockAndChance(path: string, text: string): readonly string[] {
  const found: string[] = [];
  const add = (node: SyntaxNode, what: string): void => {
    found.push(`${path}:${text.slice(0, node.start).split('\n').length} ${what}`);
  };
  walk(parse(path, text), (node) => {
    const { type, object, callee, init } = node;
    if (type === 'MemberExpression') {
      const name = memberName(node);
      if (isIdentifier(object, 'Date') && name === 'now') add(node, 'Date.now');
      if (isIdentifier(object, 'Math') && (name === 'random' || name === undefined)) add(node, 'Math.random');
      for (const source of ['performance', 'crypto', 'globalThis'])
        if (isIdentifier(object, source)) add(node, source);
    }
    if (
      type === 'NewExpression' &&
      isIdentifier(callee, 'Date') &&
      (node.arguments as unknown[]).length === 0
    )
      add(node, 'new Date()');
    if (type === 'CallExpression' && isIdentifier(callee, 'Date')) add(node, 'Date()');
    for (const source of ['setTimeout', 'setInterval', 'queueMicrotask', 'fetch'])
      if (type === 'CallExpression' && isIdentifier(callee, source)) add(node, source);
    // const { random } = Math
    if (type === 'VariableDeclarator' && (isIdentifier(init, 'Math') || isIdentifier(init, 'Date')))
      add(node, 'Math or Date under another name');
  });
  return found;
}

/** Whether a file uses a name anywhere but in comments and strings. */
export function mentions(path: string, text: string, name: string): boolean {
  if (!text.includes(name)) return false;
  let isFound = false;
  walk(parse(path, text), (node) => {
    isFound ||= isIdentifier(node, name);
  });
  return isFound;
}

/** `now` of `Date.now` and of `Date['now']`; undefined where it is computed. */
function memberName(node: SyntaxNode): string | undefined {
  const property = node.property as SyntaxNode;
  const name = property.type === 'Identifier' && !node.computed ? property.name : property.value;
  return typeof name === 'string' ? name : undefined;
}
