import {
  cardPhrases,
  citationWords,
  formulaPhrases,
  formulaWords,
  sourcePhrases,
} from './de/explained/index.ts';
import type { Language } from './show.ts';

/**
 * Explanations stand beside their functions and are written there in English; here they become a reader's
 * language. Letters, functions, titles and authors stay as they are. What has no words here stays English: a
 * test reads every explanation of core and fails on one.
 */

/** A formula or a symbol in plain text, `V_pull` as `V_Zug`. */
export function explainedFormula(text: string, language: Language): string {
  if (language === 'en') return text;
  return formulaPhrases.get(text) ?? decimals(words(text));
}

/** A formula as it is typeset; only what stands upright in it is words. */
export function explainedTex(tex: string, language: Language): string {
  if (language === 'en') return tex;
  return tex
    .replace(/\\(mathrm|text)\{([^}]*)\}/g, (_, command: string, inner: string) => {
      const said = formulaPhrases.get(inner.trim());
      return `\\${command}{${said ?? words(inner)}}`;
    })
    .replace(/(?<=\d)\.(?=\d)/g, '{,}');
}

/** A source, part by part. */
export function explainedSource(source: string, language: Language): string {
  if (language === 'en') return source;
  return source
    .split('; ')
    .map((part) => sourcePhrases.get(part) ?? citation(part))
    .join('; ');
}

/** A name, a unit in words or a range of a card. */
export function explainedRemark(text: string, language: Language): string {
  if (language === 'en') return text;
  const exact = cardPhrases.get(text);
  if (exact !== undefined) return exact;
  const numbers = text.match(number) ?? [];
  const pattern = cardPhrases.get(text.replace(number, '#'));
  if (pattern === undefined) return text;
  let next = 0;
  const filled = pattern.replace(/#/g, () => numbers[next++]?.replace('-', '−') ?? '#');
  return decimals(filled);
}

const number = /-?\d+(?:\.\d+)?/g;
const word = /[A-Za-z]{2,}/g;

function words(text: string): string {
  return text.replace(word, (one) => formulaWords.get(one) ?? one);
}

function decimals(text: string): string {
  return text.replace(/(?<=\d)\.(?=\d)/g, ',');
}

function citation(part: string): string {
  return citationWords.reduce((said, [what, ours]) => said.replace(what, ours), part);
}
