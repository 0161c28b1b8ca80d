import type { ScreenWords } from '../../screen-words.ts';

export const heat: ScreenWords['heat'] = {
  title: 'Wärme',
  cantYet: 'Noch keine Wärme auf dem Weg der Ladung.',
  sentence: (boost, rpm) => `Bei ${boost} und ${rpm} hat die Ladung am Einlass `,
  withSpray: (temperature) => `${temperature} mit Einspritzung`,
  without: (temperature) => `, ${temperature} ohne.`,
  drySentence: (temperature) => `${temperature}: dort fließt kein Fluid.`,
  second: (air, way, life) =>
    `Der mittlere Tropfen hat ${way} auf seinem Weg und braucht ${life}. Die Luft am Einlass ist dadurch ${air} dichter.`,
  thinner: (air, way, life) =>
    `Der mittlere Tropfen hat ${way} auf seinem Weg und braucht ${life}. Die Luft am Einlass ist dadurch ${air} dünner: der Dampf nimmt den Platz.`,
  where: 'Wo auf dem Zug',
  places: { early: 'Voller Ladedruck erreicht', peak: 'Spitzenleistung' },
  along: 'Auf dem Weg',
  station: 'Ort',
  stations: {
    ambient: 'Umgebungsluft',
    compressor: 'Hinter dem Verdichter',
    cooler: 'Hinter dem Kühler',
    spray: 'An der Düse',
    port: 'Am Einlass',
  },
  pressure: (unit) => `Druck, ${unit}`,
  wet: (unit) => `Mit Einspritzung, ${unit}`,
  dry: (unit) => `Ohne, ${unit}`,
  density: (unit) => `Trockene Luft, ${unit}`,
  evaporated: 'Fluid verdunstet',
  forever: 'ewig, denn die Luft ist voll',
  milliseconds: (count) => `${count} ms`,
  sideTitle: (share) => `${share} vom Fluid verdunsten vor dem Einlass`,
  sideNone: 'Hier fließt kein Fluid',
  sideWhy: 'Der Rest kühlt im Zylinder oder benetzt die Wand.',
  facts: {
    evaporated: 'Am Einlass verdunstet',
    lifetime: 'Leben des mittleren Tropfens',
    residence: 'Weg zum Ventil',
    cooler: 'Temperatur hinter dem Kühler',
    compressor: 'Temperatur hinter dem Verdichter',
  },
  remarks: 'Bemerkungen',
};
