import { describe, expect, it } from 'vitest';
import { type Language, screenWords, wordsOf } from '../../../core/words/index.ts';

describe.each<Language>(['en', 'de'])('in %s', (language) => {
  const { quantities } = wordsOf(language);
  const screens = screenWords(language);
  const { gate } = screens.ride;
  const { fields } = screens.sheet;
  const { kinds, exampleNames } = screens.derived;

  it('what bears a mixture goes by a name that fits lambda and a gauge’s air/fuel ratio alike', () => {
    const names = [
      quantities.lambda,
      quantities.lambdaTarget,
      gate.lambda,
      fields['engine.lambda'].label,
      fields['limits.leanestLambda'].label,
      kinds.lambda,
      exampleNames.lambdaError,
      exampleNames.smoothLambda,
    ];
    expect(names).toHaveLength(8);
    for (const name of names) expect(name).not.toMatch(/lambda/i);
  });
});
