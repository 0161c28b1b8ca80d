/** What is worth saying of a log, a column or a pull. */
declare module '../result/result.ts' {
  interface NoteFacts {
    /** The column's words were found in the dictionary. */
    'log/column-by-name': { word: string };
  }
}

export {};
