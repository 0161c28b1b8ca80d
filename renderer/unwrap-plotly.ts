import type { Plugin } from 'vite';

/** What the bundle is held in: three functions around everything, one in the other. */
const opening = /\(\s*function\(root, factory\) \{[\s\S]{0,300}?"use strict";var Plotly=\(\(\)=>\{/;
const closing =
  /return ([\w$]+)\(\);\}\)\(\);((?:\s*\/\*(?:[^*]|\*(?!\/))*\*\/)*)\s*window\.Plotly = Plotly;\s*return Plotly;\s*\}\)\);\s*$/;

/** Where plotly takes in every kind of trace beside the scatter that its core brings along. */
const otherTraces = /(\b[\w$]+\.register)\(\[(?:[\w$]+\(\),?){20,}\]\)(?=;[\w$]+\.exports=)/;

/**
 * Plotly's bundle as a module whose default is the function that starts it, or null where the bundle has another
 * shape than this knows.
 *
 * The engine parses a function again when it is called the first time, and once more when something is thrown below
 * it; plotly probes what the browser can do by catching what it throws. Wrapped as it comes, all 4.6 MB are parsed
 * eight times on the page's own thread.
 *
 * Every plot of ours is made of scatter traces: the other fifty kinds are not started, which were most of the start.
 */
export function unwrapPlotly(bundle: string): string | null {
  const head = opening.exec(bundle);
  const tail = closing.exec(bundle);
  const body = head && tail && bundle.slice(head.index + head[0].length, tail.index);
  if (!body || !otherTraces.test(body)) return null;
  const [, start, licences] = tail;
  const scatterAlone = body.replace(otherTraces, '$1([])');
  return `${bundle.slice(0, head.index)}${scatterAlone}\nexport default ${start};${licences}\n`;
}

/** Without it plotly works as well, a second later. */
export const unwrappedPlotly: Plugin = {
  name: 'unwrapped-plotly',
  transform: {
    filter: { id: /plotly\.js-dist-min[\\/]plotly\.min\.js$/ },
    handler(bundle) {
      const code = unwrapPlotly(bundle);
      if (code === null)
        this.warn('plotly has another shape than before and stays wrapped: see unwrap-plotly.ts');
      // Its parts reach each other in ways that no bundler should judge.
      return code === null ? null : { code, map: null, moduleSideEffects: 'no-treeshake' };
    },
  },
};
