import { describe, expect, it } from 'vitest';
import {
  explainedFormula,
  explainedRemark,
  explainedSource,
  explainedTex,
} from '../../../core/words/index.ts';
import { explainedTexts, textsOf } from '../../support/explained-texts.ts';

const project = new URL('../../..', import.meta.url).pathname;
const texts = explainedTexts(project);
const of = (...parts: readonly (typeof texts)[number]['part'][]) =>
  texts.filter((t) => parts.includes(t.part));

/** Functions, Greek letters, abbreviations and units: the same in both languages. */
const neutral =
  /^(?:sqrt|exp|ln|min|max|sin|cos|atan|mean|rho|tau|eta|lambda|sigma|delta|nu|pi|mu|dp|dt|dv|dw|dP|dx|sat|AFR|CdA|Crr|Fmax|Re|Pr|ON|VE|Iw|Ie|Pw|Pe|Tc|Rd|Rv|pd|pv|hPa|kPa|mL|atm|ms|hp|fg|crit|bar|Median|median|P|x)$/;
/** Words that stand in English sentences and in no German one. */
const english =
  /\b(?:the|and|of|is|are|with|from|not|this|that|as|its|by|to|at|over|per|common|practice|memory|limits?|ed\.|ch\.|eq\.|water|speed|pressure)\b/;

const wordsIn = (formula: string): readonly string[] => formula.match(/[A-Za-z]{2,}/g) ?? [];
const upright = (tex: string) => [...tex.matchAll(/\\(?:mathrm|text)\{([^}]*)\}/g)].map((m) => m[1] ?? '');

/** Words of the English text that stand in the German one as they were. */
const leftEnglish = (before: string, after: string) =>
  wordsIn(after).filter((w) => w.length > 2 && !neutral.test(w) && wordsIn(before).includes(w));

describe('the explanations of core', () => {
  it('are all found', () => {
    expect(of('formula').length).toBeGreaterThan(60);
    expect(of('source').length).toBeGreaterThan(60);
    expect(of('validRange').length).toBeGreaterThan(12);
  });

  it('leave no English word in a German formula or symbol', () => {
    const left = of('formula', 'symbol').flatMap((t) =>
      leftEnglish(t.text, explainedFormula(t.text, 'de')).map((w) => `${t.file}: ${w} in ${t.text}`),
    );
    expect(left).toEqual([]);
  });

  it('leave no English word in what is typeset', () => {
    const left = of('tex').flatMap((t) =>
      upright(explainedTex(t.text, 'de'))
        .filter(
          (w) =>
            english.test(w) ||
            upright(t.text)
              .filter((u) => !/^[a-z]{1,3}$|mL|atm|hp|ms|sat|K/.test(u))
              .includes(w),
        )
        .map((w) => `${t.file}: ${w} in ${t.text}`),
    );
    expect(left).toEqual([]);
  });

  it('leave no English word in a German source but titles', () => {
    // A title starts with a capital after an author; what remains English in lower case is ours.
    const left = of('source').flatMap((t) =>
      t.text
        .split('; ')
        .filter((part) => !part.startsWith('#'))
        .map((part) => explainedSource(part, 'de'))
        .filter((said) =>
          english.test(said.replace(/\p{Lu}\p{L}+(?: (?:and|of|on|to|the|\p{Lu}\p{L}*))+/gu, '')),
        )
        .map((said) => `${t.file}: ${said}`),
    );
    expect(left).toEqual([]);
  });

  it('have German names, units and ranges', () => {
    const left = of('name', 'unit', 'validRange')
      .filter(
        (t) =>
          /[a-z]{4,}/.test(t.text) &&
          explainedRemark(t.text.replaceAll('#', '1'), 'de') === t.text.replaceAll('#', '1'),
      )
      .map((t) => `${t.file}: ${t.text}`);
    expect(left).toEqual([]);
  });

  it('would be caught with a word that has no German', () => {
    expect(leftEnglish('q = wobble V_pull', explainedFormula('q = wobble V_pull', 'de'))).toEqual(['wobble']);
  });

  it('stay as they are in English', () => {
    expect(explainedFormula('pulls = (tank - reserve) / V_pull', 'en')).toBe(
      'pulls = (tank - reserve) / V_pull',
    );
  });

  it('name a symbol in the formula and among what was put in alike', () => {
    expect(explainedFormula('pulls = (tank - reserve) / V_pull', 'de')).toBe(
      'Züge = (Tank - Reserve) / V_Zug',
    );
    expect(explainedFormula('V_pull', 'de')).toBe('V_Zug');
    expect(explainedTex(String.raw`\frac{V_\mathrm{tank}-V_\mathrm{reserve}}{2.5}`, 'de')).toBe(
      String.raw`\frac{V_\mathrm{Tank}-V_\mathrm{Reserve}}{2{,}5}`,
    );
  });

  it('fill numbers into a range with the decimal sign of the language', () => {
    expect(
      explainedRemark(
        'one gear, one car; practice: -0.2 ± 0.1 % per K, drift of ± 0.3 % a pull, on a calm day ± 0.1 %, the first pull ± 0.3 %',
        'de',
      ),
    ).toContain('0,2 ± 0,1 % je K, Drift von ± 0,3 % je Zug');
  });

  it('keep titles and authors of a source', () => {
    expect(
      explainedSource(
        'Sun and Loader, Annals of Statistics 22 (1994) 1328; CRC Handbook, 102nd ed., Concentrative Properties of Aqueous Solutions',
        'de',
      ),
    ).toBe(
      'Sun und Loader, Annals of Statistics 22 (1994) 1328; CRC Handbook, 102. Aufl., Concentrative Properties of Aqueous Solutions',
    );
  });
});

describe('the reader of explanations', () => {
  it('finds the texts of every form they are written in', () => {
    const found = textsOf(
      'core/planted.ts',
      `const e: Explanation = { formula: 'a', source: \`b; \${x ? 'c' : 'd'}\` };
       const limitSource = { knock: 'f' }; input('P', 'W', 'power'); of('i', 'g', 'h', [], 'j');`,
    ).map((t) => t.text);
    expect(found).toEqual(
      expect.arrayContaining(['a', 'b; #', 'c', 'd', 'f', 'P', 'W', 'power', 'g', 'h', 'j']),
    );
  });
});
