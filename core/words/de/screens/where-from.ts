import type { ScreenWords } from '../../screen-words.ts';

export const whereFrom: ScreenWords['whereFrom'] = {
  title: 'Woher diese Zahl kommt',
  formula: 'Formel',
  inputs: 'Eingesetzt',
  source: 'Quelle',
  valid: 'Gilt für',
  from: (symbol, low, high) => `${symbol} von ${low} bis ${high}`,
  copy: 'Als Text kopieren',
  copied: 'Kopiert.',
  ask: 'Woher?',
  askOf: (what) => `Woher: ${what}`,
};
