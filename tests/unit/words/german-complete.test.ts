import { describe, expect, it } from 'vitest';
import { dictionary } from '../../../core/words/de/index.ts';
import { screens } from '../../../core/words/de/screens/index.ts';
import { handoverPhrases } from '../../../core/words/index.ts';

/** Words that stand in nearly every English sentence and are no German ones. */
const english = /\b(?:the|and|of|is|are|with|from|not|this|that|which|its|by|to|no|it|be)\b/;

/** Stands for any fact a sentence may ask for: a number, a text, a list, or more of the same. */
function anything(): unknown {
  const stand = () => anything();
  return new Proxy(stand, {
    get: (_target, key) => {
      if (key === Symbol.toPrimitive) return () => '2';
      if (key === 'length') return 2;
      if (
        ['map', 'flatMap', 'filter', 'slice', 'join', 'toString', 'toFixed', 'replace'].includes(String(key))
      )
        return (...args: readonly unknown[]) =>
          key === 'map' && typeof args[0] === 'function' ? [args[0](anything(), 0)] : '2';
      return anything();
    },
    apply: () => anything(),
  });
}

/** Every text of a tree of words, with its place; sentences with facts are made with stand-ins. */
function textsOf(words: unknown, path: string): { path: string; text: string }[] {
  if (typeof words === 'string') return [{ path, text: words }];
  if (typeof words === 'function' && !('prototype' in words && words.prototype)) {
    try {
      return textsOf(words(anything(), anything(), anything()), path);
    } catch {
      // Asks for a fact of a special shape: the source of the function still shows its words.
      return [{ path, text: quotedIn(String(words)) }];
    }
  }
  if (typeof words !== 'object' || words === null) return [];
  return Object.entries(words).flatMap(([key, part]) => textsOf(part, `${path}.${key}`));
}

/** The literals in a function's source. */
function quotedIn(source: string): string {
  return (source.match(/(["'`])(?:(?!\1).)*\1/g) ?? []).join(' ').replaceAll(/\$\{[^}]*\}/g, ' ');
}

describe('the German words', () => {
  const texts = [
    ...textsOf(screens, 'screens'),
    ...textsOf(dictionary, 'dictionary'),
    ...textsOf(handoverPhrases('de'), 'handover'),
  ];

  it('are all looked at', () => {
    expect(texts.length).toBeGreaterThan(1500);
  });

  it('hold no English sentence', () => {
    const found = texts.filter(({ text }) => english.test(text)).map(({ path, text }) => `${path}: ${text}`);
    expect(found).toEqual([]);
  });

  it('are told from English by the words that are looked for', () => {
    expect(english.test('Check the name, or pick the file again.')).toBe(true);
    expect(english.test('Namen prüfen oder die Datei noch einmal wählen.')).toBe(false);
  });
});

/** Words of the trade that had two names, and the one that is said; the table stands in DEVELOPERS.md. */
const other: readonly { readonly word: RegExp; readonly say: string; readonly unless?: RegExp }[] = [
  { word: /Messfahrt|Volllastfahrt|Messlauf/, say: 'Zug' },
  {
    word: /Flüssigkeit/,
    say: 'Fluid',
    // What any liquid is called, in law and in a cylinder.
    unless: /brennbare Flüssigkeit|Flüssigkeitsschlag|Wärmekapazität der Flüssigkeit/,
  },
  { word: /Startpunkt|\bStart (?:bei|von|niedriger)|[Ss]pätere[rnms]* Start/, say: 'Beginn' },
  { word: /Grundmessung|Basismessung|Nullmessung/, say: 'Ausgangsstand' },
  { word: /Zielgemisch|Ziel-Lambda|Lambdaziel/, say: 'Gemischziel' },
  { word: /Kraftstoffkorrektur|Kraftstoffanpassung/, say: 'Gemischkorrektur' },
  { word: /[Vv]erdampf/, say: 'verdunsten' },
  { word: /[Gg]eloggt/, say: 'aufgezeichnet' },
  { word: /Sprühung/, say: 'Einspritzung' },
  { word: /Einschaltdauer/, say: 'Auslastung' },
  { word: /Protokoll(?!datei)/, say: 'Logbuch' },
  { word: /Schranke|Abbruchgrenze|Stoppregel/, say: 'Abbruchregel' },
];

describe('the German of the trade', () => {
  const texts = [
    ...textsOf(screens, 'screens'),
    ...textsOf(dictionary, 'dictionary'),
    ...textsOf(handoverPhrases('de'), 'handover'),
  ];

  it.each(other)('says $say and nothing else for it', ({ word, unless }) => {
    const found = texts
      .filter(({ text }) => word.test(text) && !unless?.test(text))
      .map(({ path, text }) => `${path}: ${text}`);
    expect(found).toEqual([]);
  });
});
