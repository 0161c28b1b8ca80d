const entities: Readonly<Record<string, string>> = { lt: '<', gt: '>', quot: '"', amp: '&', '#39': "'" };

/** What a reader sees of each cell, value and line of a page, without blanks. */
export function saidIn(html: string): string[] {
  const parts = html.matchAll(/<(dd|td|th|li|h1|h2|p)\b[^>]*>(.*?)<\/\1>/gs);
  return [...parts].map(([, , inner = '']) =>
    inner
      .replace(/<div class="more">.*?<\/div>|<svg.*?<\/svg>/gs, '')
      .replace(/<[^>]*>/g, '')
      .replace(/&([a-z#0-9]+);/g, (_, name: string) => entities[name] ?? '?')
      .replace(/\s+/g, ''),
  );
}
