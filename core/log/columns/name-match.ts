import { type ColumnRule, columnRules } from './column-rules.ts';
import { type Concept, concepts, plainWords } from './column-words.ts';

/** What a header may mean, best first. */
export type NameMatch = {
  readonly quantity: ColumnRule['quantity'];
  /** 0 to 1; falls with the share of the header that the words leave unexplained. */
  readonly trust: number;
  /** The words of the header that told it, whole. */
  readonly word: string;
};

/** Concepts said by a header, each with its words and the letters it covers. */
export function conceptsOf(text: string): ReadonlyMap<Concept, { word: string; covered: Set<number> }> {
  const words = plainWords(text);
  const found = new Map<Concept, { word: string; covered: Set<number> }>();
  for (const [concept, pattern] of concepts) {
    // Most concepts are not said, and `matchAll` makes a pattern of its own each time.
    if (words.search(pattern) < 0) continue;
    const covered = new Set<number>();
    const said: string[] = [];
    for (const match of words.matchAll(pattern)) {
      const whole = wholeWords(words, match.index, match.index + match[0].length);
      if (!said.includes(whole)) said.push(whole);
      for (let i = 0; i < match[0].length; i++)
        if (words[match.index + i] !== ' ') covered.add(match.index + i);
    }
    if (covered.size > 0) found.set(concept, { word: said.join(' '), covered });
  }
  return found;
}

/** The words that reach into a stretch of the text: the whole Motordrehzahl for the drehzahl in it. */
function wholeWords(text: string, from: number, to: number): string {
  const start = text.lastIndexOf(' ', from) + 1;
  const end = text.indexOf(' ', to);
  return text.slice(start, end < 0 ? text.length : end).trim();
}

/** A header that asks for a value is another thing than one that reports it, whatever else it says. */
const decisive: readonly Concept[] = ['target', 'error', 'other'];

/**
 * Words that make another quantity of the one beside them, and the quantities that bear them: the volts of a
 * pressure sensor are no pressure, the highest engine speed is not the engine speed, a pedal's rate not the pedal.
 */
const turning: readonly { readonly concept: Concept; readonly bears: ReadonlySet<string> }[] = [
  { concept: 'raw', bears: new Set(['pedal', 'throttle', 'batteryVoltage', 'knockLevel']) },
  { concept: 'bound', bears: new Set(['limiterActive']) },
  { concept: 'change', bears: new Set(['airMassFlow', 'fuelFlow', 'fluidFlow', 'acceleration']) },
];

/**
 * Ranks what a column header may mean. Units belong elsewhere: give the name without them.
 *
 * Check: `Motordrehzahl` is engineSpeed, `Ladedruck Soll` is boostTarget.
 */
export function matchName(name: string): readonly NameMatch[] {
  const said = conceptsOf(name);
  const letters = plainWords(name).replace(/ /g, '').length;
  if (letters === 0) return [];
  const matches: (NameMatch & { rank: number })[] = [];
  for (const rule of columnRules) {
    if (!rule.all.every((c) => said.has(c))) continue;
    if (rule.none?.some((c) => said.has(c))) continue;
    if (decisive.some((c) => said.has(c) && !rule.all.includes(c))) continue;
    if (turning.some((t) => said.has(t.concept) && !t.bears.has(rule.quantity))) continue;
    const covered = new Set<number>();
    const words: string[] = [];
    const filler = said.get('filler');
    for (const concept of rule.all) {
      const entry = said.get(concept);
      if (!entry) continue;
      if (!words.includes(entry.word)) words.push(entry.word);
      for (const at of entry.covered) covered.add(at);
    }
    const explained = filler ? new Set([...covered, ...filler.covered]).size : covered.size;
    const share = explained / letters;
    matches.push({
      quantity: rule.quantity,
      // A header half of which is unknown words is still a good hint: 0.75 of the trust (common practice).
      trust: rule.trust * (0.5 + 0.5 * Math.min(1, share)),
      word: words.join(' '),
      rank: covered.size + 0.5 * rule.all.length + rule.trust,
    });
  }
  matches.sort((a, b) => b.rank - a.rank);
  const best = new Map<string, NameMatch>();
  for (const { quantity, trust, word } of matches)
    if (!best.has(quantity)) best.set(quantity, { quantity, trust, word });
  return [...best.values()];
}
