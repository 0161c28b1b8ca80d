/** Names that a sentence can hold before it is no longer read (common practice). */
const most = 12;

/** The first of many names, and how many others there are: a log may have a thousand columns. */
export function firstNames(names: readonly string[], others: (count: number) => string): string {
  const first = names.slice(0, most).join(', ');
  return names.length > most ? `${first}, ${others(names.length - most)}` : first;
}
