import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escapeHtml, html } from '../../../core/handover/index.ts';

describe('text on its way into the handover', () => {
  it('can open no tag and end no attribute', () => {
    expect(escapeHtml(`<img src=x onerror="alert('1')">&`)).toBe(
      '&lt;img src=x onerror=&quot;alert(&#39;1&#39;)&quot;&gt;&amp;',
    );
  });

  it('loses control characters but keeps line ends', () => {
    expect(escapeHtml('a\u0000b\nc\u001bd')).toBe('ab\ncd');
  });

  it('holds for any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(escapeHtml(text)).not.toMatch(/[<>"']/);
      }),
    );
    // The first text of any kind costs the generator seconds on a machine that is shared.
  });

  it('escapes values of a template once and leaves nested templates alone', () => {
    const item = html`<b>${'<&>'}</b>`;
    expect(html`<p title="${'"'}">${item}${[item, null, false, 3]}</p>`.html).toBe(
      '<p title="&quot;"><b>&lt;&amp;&gt;</b><b>&lt;&amp;&gt;</b>3</p>',
    );
  });
});
