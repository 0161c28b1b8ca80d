const replacements: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text as HTML or SVG text or attribute value: no character of it can open a tag or end an attribute. */
export function escapeHtml(text: string): string {
  // Control characters have no meaning in HTML and some readers stop at them.
  return text
    .replace(/\p{Cc}/gu, (c) => (c === '\n' || c === '\t' ? c : ''))
    .replace(/[&<>"']/g, (c) => replacements[c] ?? '');
}

/** A template whose values are all escaped; nested results of `html` pass as they are. */
export function html(strings: TemplateStringsArray, ...values: readonly HtmlValue[]): Html {
  let out = strings[0] ?? '';
  for (const [i, value] of values.entries()) out += htmlOf(value) + (strings[i + 1] ?? '');
  return { html: out };
}

export type Html = { readonly html: string };
export type HtmlValue = Html | string | number | null | false | readonly HtmlValue[];

function htmlOf(value: HtmlValue): string {
  if (value === null || value === false) return '';
  if (typeof value === 'string') return escapeHtml(value);
  if (typeof value === 'number') return escapeHtml(String(value));
  if ('html' in value) return value.html;
  return value.map(htmlOf).join('');
}
