/** The list of SHA-256 sums in a zip, in the form that `sha256sum --check` reads. */
export const checksumsName = 'checksums.sha256';

/** Path to sum, a line each. */
export function writeChecksums(sums: ReadonlyMap<string, string>): string {
  return [...sums].map(([path, sum]) => `${sum}  ${path}\n`).join('');
}

/** Path to sum; lines of another form are left out. */
export function readChecksums(text: string): Map<string, string> {
  const sums = new Map<string, string>();
  for (const line of text.split('\n')) {
    const [, sum, path] = /^([0-9a-f]{64}) [ *](.+)$/.exec(line) ?? [];
    if (sum !== undefined && path !== undefined) sums.set(path, sum);
  }
  return sums;
}
