import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { parseSync } from 'oxc-parser';

/** One import: `to` is a path from the project folder, or a package name (`node:fs`, `zod`). */
export type Import = {
  readonly from: string;
  readonly line: number;
  readonly to: string;
  readonly isPackage: boolean;
  /** Gone when the program runs. */
  readonly isType: boolean;
};

export type SyntaxNode = { readonly type: string; readonly start: number } & Record<string, unknown>;

const sourceFile = /\.(ts|tsx|mts|cts|mjs|cjs|js)$/;

/** Paths of all our source files under `folder`, from the project folder, sorted. */
export function sourceFiles(project: string, folder: string): readonly string[] {
  return readdirSync(join(project, folder), { withFileTypes: true })
    .flatMap((entry) => {
      const path = `${folder}/${entry.name}`;
      if (entry.isDirectory()) return entry.name === 'dist' ? [] : sourceFiles(project, path);
      return sourceFile.test(entry.name) ? [path] : [];
    })
    .sort();
}

/** The syntax tree's root, or a thrown Error naming the place: our own sources must parse. */
export function parse(path: string, text: string): SyntaxNode {
  const { program, errors } = parseSync(path, text);
  if (errors[0]) throw new Error(`${path}: ${errors[0].message}`);
  return program as unknown as SyntaxNode;
}

/** Calls `visit` on every node, parents first. */
export function walk(node: unknown, visit: (node: SyntaxNode) => void): void {
  if (Array.isArray(node)) {
    for (const child of node) walk(child, visit);
  } else if (node !== null && typeof node === 'object') {
    if (isNode(node)) visit(node);
    for (const child of Object.values(node)) walk(child, visit);
  }
}

function isNode(value: object): value is SyntaxNode {
  return 'type' in value && typeof value.type === 'string';
}

/**
 * Every import of one file: static and dynamic, of values and of types, re-exports, `require`, and
 * `new URL('./x', import.meta.url)` as workers are named. One whose target is computed has the target
 * `(computed)`, which only a rule for that very file allows.
 */
export function importsOf(path: string, text: string): readonly Import[] {
  const found: Import[] = [];
  const add = (node: SyntaxNode, source: unknown): void => {
    const line = text.slice(0, node.start).split('\n').length;
    const name = literal(source);
    const isType = node.type === 'TSImportType' || node.importKind === 'type' || node.exportKind === 'type';
    const to = name === undefined ? { to: '(computed)', isPackage: true } : target(path, name);
    found.push({ from: path, line, isType, ...to });
  };
  walk(parse(path, text), (node) => {
    switch (node.type) {
      case 'ImportDeclaration':
      case 'ExportAllDeclaration':
      case 'ImportExpression':
      case 'TSImportType':
        add(node, node.source);
        break;
      case 'ExportNamedDeclaration':
        if (node.source) add(node, node.source);
        break;
      case 'TSExternalModuleReference':
        add(node, node.expression);
        break;
      case 'CallExpression':
        if (isIdentifier(node.callee, 'require')) add(node, (node.arguments as unknown[])[0]);
        break;
      case 'NewExpression': {
        const [source, base] = node.arguments as [unknown, SyntaxNode | undefined];
        const name = literal(source);
        if (
          isIdentifier(node.callee, 'URL') &&
          base?.type === 'MemberExpression' &&
          name &&
          sourceFile.test(name)
        )
          add(node, source);
        break;
      }
    }
  });
  return found;
}

export function isIdentifier(node: unknown, name: string): boolean {
  return (node as SyntaxNode | undefined)?.type === 'Identifier' && (node as SyntaxNode).name === name;
}

function literal(node: unknown): string | undefined {
  const {
    type,
    value,
    literal: inner,
  } = (node ?? {}) as { type?: string; value?: unknown; literal?: unknown };
  if (type === 'TSLiteralType') return literal(inner);
  return typeof value === 'string' ? value : undefined;
}

function target(from: string, name: string): { to: string; isPackage: boolean } {
  const bare = name.replace(/\?.*$/, '');
  if (bare.startsWith('.')) return { to: posix.normalize(posix.join(dirname(from), bare)), isPackage: false };
  const scope = bare.startsWith('@') ? 2 : 1;
  const isOwnPart = bare.startsWith('node:');
  return { to: isOwnPart ? bare : bare.split('/').slice(0, scope).join('/'), isPackage: true };
}

/** All imports of the files, read from disk. */
export function importGraph(project: string, files: readonly string[]): readonly Import[] {
  return files.flatMap((path) => importsOf(path, readFileSync(join(project, path), 'utf8')));
}
