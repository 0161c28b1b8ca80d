import type { Import } from './import-graph.ts';
import type { Rule } from './rules.ts';

/** The rule that decides for a file: the one with the longest folder. */
export function ruleFor(rules: readonly Rule[], path: string): Rule | undefined {
  return rules
    .filter((rule) => isWithin(rule.folder, path))
    .sort((a, b) => b.folder.length - a.folder.length)[0];
}

/** One sentence for each import that no rule allows, with the rule's reason. */
export function forbiddenImports(rules: readonly Rule[], imports: readonly Import[]): readonly string[] {
  return imports.flatMap((one) => {
    const rule = ruleFor(rules, one.from);
    if (!rule) return [`${at(one)}: no rule covers this folder`];
    if (one.isPackage ? allowsPackage(rule, one.to) : allowsFile(rule, one)) return [];
    return [`${at(one)} imports ${one.to}: ${rule.why}`];
  });
}

/** One sentence for each import that reaches past another folder's index.ts. */
export function privateImports(folders: readonly string[], imports: readonly Import[]): readonly string[] {
  return imports.flatMap((one) => {
    const folder = folders.find((candidate) => isWithin(candidate, one.to));
    if (one.isPackage || folder === undefined || isWithin(folder, one.from)) return [];
    return one.to === `${folder}/index.ts`
      ? []
      : [`${at(one)} imports ${one.to}: only ${folder}/index.ts is handed out`];
  });
}

/** One sentence for each import of a part of Node that can reach a network, outside the one shell that serves. */
export function networkImports(allowedFolder: string, imports: readonly Import[]): readonly string[] {
  return imports
    .filter((one) => networkParts.has(one.to) && !one.isType && !isWithin(allowedFolder, one.from))
    .map((one) => `${at(one)} imports ${one.to}: the program works without a network, and asks nobody`);
}

/** One sentence for each import inside an area that goes from one of its folders to a more particular one. */
export function backwardImports(
  insideOrders: Readonly<Record<string, readonly string[]>>,
  imports: readonly Import[],
): readonly string[] {
  return Object.entries(insideOrders).flatMap(([area, order]) => {
    const placeOf = (path: string) => order.findIndex((folder) => isWithin(`${area}/${folder}`, path));
    return imports
      .filter((one) => placeOf(one.from) >= 0 && placeOf(one.to) > placeOf(one.from))
      .map((one) => `${at(one)} imports ${one.to}: inside ${area} the order is ${order.join(', ')}`);
  });
}

const networkParts = new Set(
  ['http', 'https', 'http2', 'net', 'tls', 'dgram', 'dns', 'dns/promises', 'inspector'].map(
    (name) => `node:${name}`,
  ),
);

/**
 * Each circle of imports at run time once, as `a -> b -> a`. Two files of one folder may know each other's
 * types; between folders the rules allow one direction only, for types as well.
 */
export function circles(imports: readonly Import[]): readonly string[] {
  const next = new Map<string, string[]>();
  for (const one of imports)
    if (!one.isPackage && !one.isType) next.set(one.from, [...(next.get(one.from) ?? []), one.to]);
  const found = new Set<string>();
  const done = new Set<string>();
  const follow = (file: string, path: readonly string[]): void => {
    const start = path.indexOf(file);
    if (start >= 0) found.add(circleText(path.slice(start)));
    if (start >= 0 || done.has(file)) return;
    for (const to of next.get(file) ?? []) follow(to, [...path, file]);
    done.add(file);
  };
  for (const file of next.keys()) follow(file, []);
  return [...found].sort();
}

/** Turned so that it starts at its first name: the same circle entered elsewhere reads the same. */
function circleText(files: readonly string[]): string {
  const first = files.indexOf([...files].sort()[0] ?? '');
  const turned = [...files.slice(first), ...files.slice(0, first)];
  return [...turned, turned[0]].join(' -> ');
}

function allowsPackage(rule: Rule, name: string): boolean {
  return rule.packages.includes(name) || (name.startsWith('node:') && rule.packages.includes('node:*'));
}

function allowsFile(rule: Rule, { to }: Import): boolean {
  return [rule.folder, ...rule.mayImport].some((folder) => isWithin(folder, to));
}

function isWithin(folder: string, path: string): boolean {
  return path === folder || path.startsWith(`${folder}/`);
}

function at({ from, line }: Import): string {
  return `${from}:${line}`;
}
