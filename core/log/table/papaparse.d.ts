/** The few parts of papaparse that the reader uses; the published types would pull Node's into core. */
declare module 'papaparse' {
  export type ParseConfig = {
    readonly delimiter?: string;
    readonly newline?: string;
    readonly quoteChar?: string;
    readonly preview?: number;
    readonly skipEmptyLines?: boolean | 'greedy';
  };
  export type ParseResult = { readonly data: string[][] };
  const papaparse: {
    parse(text: string, config: ParseConfig): ParseResult;
    unparse(rows: readonly (readonly unknown[])[], config?: { delimiter?: string; newline?: string }): string;
  };
  export default papaparse;
}
