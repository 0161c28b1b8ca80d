import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { unwrapPlotly } from '../../../renderer/unwrap-plotly.ts';

const bundle = readFileSync(createRequire(import.meta.url).resolve('plotly.js-dist-min'), 'utf8');

describe("plotly's bundle without its wrapping", () => {
  const unwrapped = unwrapPlotly(bundle) ?? '';

  it('is a module that hands out the function that starts it', () => {
    expect(unwrapped).toMatch(/^\/\*\*\s+\* plotly\.js v/);
    expect(unwrapped).toMatch(/\nexport default [\w$]+;/);
    expect(unwrapped).not.toContain('window.Plotly = Plotly');
  });

  it('starts no kind of trace but the scatter of its core', () => {
    expect(bundle).toMatch(/\.register\(\[(?:[\w$]+\(\),){40,}[\w$]+\(\)\]\)/);
    expect(unwrapped).not.toMatch(/\.register\(\[(?:[\w$]+\(\),){40,}/);
    expect(unwrapped).toContain('.register([]);');
  });

  it('keeps everything between and all licences', () => {
    expect(bundle.length - unwrapped.length).toBeLessThan(1200);
    expect(bundle.length).toBeGreaterThan(unwrapped.length);
    for (const licence of ['Licensed under the MIT license', 'MapLibre GL JS', 'Feross Aboukhadijeh'])
      expect(unwrapped.split(licence)).toHaveLength(bundle.split(licence).length);
  });

  it('is not made of a bundle of another shape', () => {
    expect(
      unwrapPlotly(bundle.replace('root.moduleName', 'root.otherName').replace('(()=>{', '(function(){')),
    ).toBeNull();
    expect(unwrapPlotly(bundle.slice(0, -20))).toBeNull();
    expect(unwrapPlotly('export default 1;')).toBeNull();
  });
});
