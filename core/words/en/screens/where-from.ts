export const whereFrom = {
  title: 'Where this number comes from',
  formula: 'Formula',
  inputs: 'Put in',
  source: 'Source',
  valid: 'Holds for',
  from: (symbol: string, low: string, high: string) => `${symbol} from ${low} to ${high}`,
  copy: 'Copy as text',
  copied: 'Copied.',
  ask: 'Where from?',
  askOf: (what: string) => `Where from: ${what}`,
};
