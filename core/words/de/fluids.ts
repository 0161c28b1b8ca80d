import type { TemperatureProperty } from '../../fluids/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

const properties: Record<TemperatureProperty, string> = {
  density: 'Die Dichte',
  latentHeat: 'Die Verdampfungswärme',
  vapourPressure: 'Der Dampfdruck',
  liquidHeatCapacity: 'Die Wärmekapazität der Flüssigkeit',
  vapourHeatCapacity: 'Die Wärmekapazität des Dampfes',
  viscosity: 'Die Viskosität',
};
const parts = { water: 'Wasser', methanol: 'Methanol', ethanol: 'Ethanol', petrol: 'Benzin' } as const;

export const fluidsProblems: ProblemWordsOf<'fluids'> = {
  'fluids/temperature-outside': (f, show) => ({
    message: `${properties[f.property]} ist bei ${show.quantity(f.temperature, 'temperature')} nicht belegt; die veröffentlichten Werte reichen von ${show.quantity(f.from, 'temperature')} bis ${show.quantity(f.to, 'temperature')}.`,
    remedy: 'Die Temperatur des Fluids selbst eingeben, innerhalb dieses Bereichs.',
  }),
  'fluids/share-negative': (f, show) => ({
    message: `Der Anteil ${parts[f.substance]} ist ${show.quantity(f.share, 'share')}: weniger als nichts geht nicht.`,
    remedy: 'Einen Anteil von 0 bis 100 % eingeben.',
  }),
  'fluids/shares-over-whole': (f, show) => ({
    message: `Die Anteile ergeben zusammen ${show.quantity(f.sum, 'share')}: mehr als das Ganze.`,
    remedy: 'Einen davon senken, bis sie höchstens 100 % ergeben; der Rest ist Wasser.',
  }),
  'fluids/share-missing': (f) => ({
    message: `Der Anteil ${parts[f.substance]} ist keine Zahl.`,
    remedy: 'Eine Zahl eingeben, zum Beispiel 50.',
  }),
  'fluids/reading-outside': (f, show) => ({
    message: `Eine Dichte von ${show.quantity(f.density, 'density', 4)} bei ${show.quantity(f.temperature, 'temperature')} passt zu keiner Mischung aus Wasser und ${parts[f.alcohol]}: die hat ${show.quantity(f.lowest, 'density', 4)} bis ${show.quantity(f.highest, 'density', 4)}.`,
    remedy:
      'Ablesung und Temperatur des Fluids prüfen. Auch Farbe, Seife oder Süßstoff in gekauftem Fluid verschiebt sie.',
  }),
  'fluids/nothing-burns': () => ({
    message:
      'In dieser Mischung ist weder Benzin noch Alkohol, also gibt es kein Luft-Kraftstoff-Verhältnis.',
    remedy: 'Das Benzin oder den Alkohol ergänzen, der brennt.',
  }),
};

export const fluidsNotes: NoteWordsOf<'fluids'> = {
  'fluids/burns-at-ambient': (f, show) =>
    `Diese Mischung kann dort, wo sie steht, Feuer fangen: ihr Dampf zündet ab etwa ${show.quantity(f.flashPoint, 'temperature', 0)}, und es sind ${show.quantity(f.ambient, 'temperature', 0)}. Geschlossen halten, nach außen belüften, fern von Flammen und Funken.`,
  'fluids/burns-when-warmer': (f, show) =>
    `Bei ${show.quantity(f.ambient, 'temperature', 0)} liegt sie unter dem geschätzten Flammpunkt von etwa ${show.quantity(f.flashPoint, 'temperature', 0)} (vorsichtiger Wert). Wärme, Nebel oder ein heißes Teil zündet sie trotzdem.`,
  'fluids/does-not-burn': () => 'In diesem Fluid brennt nichts.',
  'fluids/freezes-at-ambient': (f, show) =>
    `Bei ${show.quantity(f.ambient, 'temperature', 0)} bildet sich Eis: diese Mischung friert ab ${show.quantity(f.freezingPoint, 'temperature', 0)}. Eis verstopft Leitung und Düse.`,
  'fluids/methanol-is-toxic': (f, show) =>
    `Methanol vergiftet über Haut, Atem und Mund und kann blind machen; der Grenzwert in der Luft ist ${show.number(f.exposureLimit_ppm)} ppm, der Geruch warnt nicht rechtzeitig. Handschuhe, Schutzbrille, im Freien.`,
  'fluids/flame-unseen': () => 'Eine Methanolflamme ist bei Tag nicht zu sehen.',
  'fluids/strong-mix': (f, show) =>
    `${show.quantity(f.share, 'share', 0)} Alkohol nach Volumen: als brennbare Flüssigkeit mitführen. Üblich ist halb und halb (gängige Praxis).`,
  'fluids/three-parts-estimated': (f) =>
    `Werte für ${f.alcohols.map((a) => parts[a as keyof typeof parts]).join(' und ')} in einer Mischung sind zwischen den beiden Paaren mit Wasser interpoliert.`,
  'fluids/contraction': (f, show) =>
    `Beim Zusammengießen gehen ${show.quantity(f.share, 'share')} des Volumens verloren: jeden Teil vor dem Eingießen messen.`,
};
