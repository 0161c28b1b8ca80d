import type { ShortReasons } from '../en/short-reasons.ts';
import { quantityNames } from './quantities.ts';

const sides = { before: 'vorher', after: 'nachher' } as const;

export const shortReasons: ShortReasons = {
  'compare/no-pulls': (f) => `${sides[f.side]} zählt kein Zug`,
  'compare/same-pull': () => 'dieselbe Aufzeichnung zweimal',
  'compare/other-gear': () => 'anderer Gang',
  'compare/other-gear-by-speeds': () => 'anderer Gang',
  'compare/other-basis': () => 'Leistung aus anderer Quelle',
  'compare/other-correction': () => 'andere Korrektur',
  'compare/other-mass': () => 'andere Masse',
  'compare/other-rolling': () => 'Reifen oder Schlupf anders',
  'compare/other-direction': () => 'andere Fahrtrichtung',
  'compare/no-common-band': () => 'kein gemeinsamer Drehzahlbereich',
  'compare/weather-apart': () => 'andere Luft, keine Korrektur',
  'compare/weather-beyond': () => 'andere Luft, nicht korrigierbar',
  'compare/also-moved': (f) => `auch bewegt: ${quantityNames[f.quantity]}`,
  'compare/more-than-one': () => 'mehr als eines hat sich bewegt',
  'compare/declared-missing': () => 'die Änderung fehlt in den Daten',
  'compare/knock-retard': () => 'die Klopfregelung griff ein',
  'compare/knock-events': () => 'Klopfen',
  'compare/limiter': () => 'ein Begrenzer war aktiv',
  'compare/intervention': () => 'Traktions- oder Momentenregelung',
  'compare/wheel-spin': () => 'die Räder drehten durch',
  'compare/intake-apart': () => 'Ansaugluft zu verschieden',
};
