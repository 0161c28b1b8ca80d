/** The few calls we make; the package ships no types of its own for this bundle. */
declare module 'plotly.js-dist-min' {
  export type Figure = { readonly data: unknown[]; readonly layout: object; readonly config: object };
  export type Plotly = {
    react(root: HTMLElement, data: unknown[], layout: object, config: object): Promise<unknown>;
    purge(root: HTMLElement): void;
  };
  /** Built for the screens it is the function that starts plotly (unwrap-plotly.ts). */
  const plotly: Plotly | (() => Plotly);
  export default plotly;
}
