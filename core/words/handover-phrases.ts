import type { Language } from './show.ts';

/** The fixed wording of the customer summary. */
export type HandoverPhrases = {
  readonly title: string;
  readonly invented: string;
  readonly car: string;
  readonly mass: string;
  readonly place: string;
  readonly dyno: string;
  readonly road: string;
  readonly air: string;
  readonly barometer: string;
  readonly humidity: string;
  readonly correction: string;
  readonly noCorrection: string;
  readonly gear: string;
  readonly unknown: string;
  readonly before: string;
  readonly after: string;
  readonly whole: string;
  readonly wholeNone: string;
  readonly changes: string;
  readonly change: string;
  readonly pulls: string;
  readonly worth: string;
  readonly proven: string;
  readonly droppedEntry: string;
  readonly notDriven: string;
  readonly powerChart: string;
  readonly wheelPower: string;
  readonly engineSpeed: string;
  /** Title of the difference panel, the unit in it. */
  readonly difference: (unit: string) => string;
  readonly provenBar: string;
  readonly chartDescription: (before: string, after: string) => string;
  readonly method: string;
  readonly methodLines: readonly string[];
  readonly cautions: string;
  readonly cautionLines: readonly string[];
  readonly notes: string;
  readonly signatures: string;
  readonly tuner: string;
  readonly customer: string;
  readonly date: string;
};

const phrases: Record<Language, HandoverPhrases> = {
  en: {
    title: 'Handover',
    invented: 'Invented example: this car, these people and these measurements do not exist.',
    car: 'The car',
    mass: 'Mass as driven',
    place: 'Where',
    dyno: 'Dyno',
    road: 'Closed road',
    air: 'Ambient air',
    barometer: 'Barometer',
    humidity: 'Relative humidity',
    correction: 'Power corrected to',
    noCorrection: 'not corrected for weather',
    gear: 'Gear of the pulls',
    unknown: 'not noted',
    before: 'before',
    after: 'after',
    whole: 'From the first measurement to the car as left',
    wholeNone: 'There are not yet two measured states to compare.',
    changes: 'What each change was worth',
    change: 'Change',
    pulls: 'Pulls',
    worth: 'Effect on wheel power',
    proven: 'What was proven',
    droppedEntry: 'tried and dropped',
    notDriven: 'not driven',
    powerChart: 'Wheel power before and after',
    wheelPower: 'Wheel power',
    engineSpeed: 'Engine speed',
    difference: (unit) => `Difference, ${unit}, 95 % band for the whole curve`,
    provenBar: 'proven',
    chartDescription: (before, after) =>
      `Wheel power over engine speed, ${before} against ${after}, with the difference under it.`,
    method: 'How it was measured',
    methodLines: [
      'Power is wheel power from the logged acceleration of the car, its mass and its road load; it is not crank power.',
      'A pull is one full-throttle acceleration in one gear. Each state was driven several times; a pull counts once, however many samples it holds.',
      'An effect is the mean after minus the mean before over the engine speeds that all pulls share.',
      'The figure behind ± is half of the 95 % interval: it carries how far repeated pulls scatter.',
      'Changes were made one at a time. Where a second thing moved, no effect is claimed.',
    ],
    cautions: 'Please keep in mind',
    cautionLines: [
      'The settings fit this engine with this fluid at this strength. Without fluid, or with another, they can destroy the engine in seconds: heed the low-level light at once and drive gently until it is filled.',
      'Methanol is toxic through skin and breath and burns with a flame that can’t be seen by day. Wear gloves and goggles, keep it closed, away from heat and children.',
      'The law of your place decides on road use, emissions and the storage of alcohol fuels.',
      'What is written here was measured on the day. It says what was found, and no more.',
    ],
    notes: 'Notes',
    signatures: 'Handed over',
    tuner: 'Tuner',
    customer: 'Customer',
    date: 'Date',
  },
  de: {
    title: 'Übergabe',
    invented: 'Erfundenes Beispiel: Dieses Auto, diese Menschen und diese Messungen gibt es nicht.',
    car: 'Das Auto',
    mass: 'Masse wie gefahren',
    place: 'Wo',
    dyno: 'Prüfstand',
    road: 'Gesperrte Straße',
    air: 'Außenluft',
    barometer: 'Luftdruck',
    humidity: 'Relative Feuchte',
    correction: 'Leistung korrigiert nach',
    noCorrection: 'nicht auf Normwetter umgerechnet',
    gear: 'Gang der Züge',
    unknown: 'nicht notiert',
    before: 'vorher',
    after: 'nachher',
    whole: 'Von der ersten Messung bis zum Stand bei Übergabe',
    wholeNone: 'Es gibt noch keine zwei gemessenen Stände zum Vergleich.',
    changes: 'Was jede Änderung gebracht hat',
    change: 'Änderung',
    pulls: 'Züge',
    worth: 'Wirkung auf die Radleistung',
    proven: 'Was bewiesen ist',
    droppedEntry: 'versucht und verworfen',
    notDriven: 'nicht gefahren',
    powerChart: 'Radleistung vorher und nachher',
    wheelPower: 'Radleistung',
    engineSpeed: 'Motordrehzahl',
    difference: (unit) => `Unterschied, ${unit}, 95-%-Band der ganzen Kurve`,
    provenBar: 'belegt',
    chartDescription: (before, after) =>
      `Radleistung über der Motordrehzahl, ${before} gegen ${after}, darunter der Unterschied.`,
    method: 'Wie gemessen wurde',
    methodLines: [
      'Leistung heißt Radleistung aus der aufgezeichneten Beschleunigung, der Masse und den Fahrwiderständen; sie ist nicht die Leistung an der Kurbelwelle.',
      'Ein Zug ist eine Volllastbeschleunigung in einem Gang. Jeder Stand wurde mehrmals gefahren; ein Zug zählt einmal, gleich wie viele Messpunkte er hat.',
      'Eine Wirkung ist der Mittelwert nachher minus vorher über die Drehzahlen, die alle Züge gemeinsam haben.',
      'Die Zahl hinter ± ist die Hälfte des 95-%-Bereichs: Sie enthält die Streuung wiederholter Züge.',
      'Geändert wurde immer nur eines. Wo sich ein Zweites bewegt hat, wird keine Wirkung behauptet.',
    ],
    cautions: 'Bitte beachten',
    cautionLines: [
      'Die Einstellungen passen zu diesem Motor mit diesem Fluid in dieser Stärke. Ohne Fluid oder mit anderem können sie den Motor in Sekunden zerstören: Die Füllstandsleuchte sofort beachten und bis zum Nachfüllen verhalten fahren.',
      'Methanol ist giftig, auch durch Haut und Atem, und verbrennt mit einer Flamme, die bei Tag unsichtbar ist. Handschuhe und Brille tragen, verschlossen, fern von Hitze und Kindern aufbewahren.',
      'Über Straßengebrauch, Abgas und die Lagerung von Alkoholkraftstoff entscheidet das Recht vor Ort.',
      'Hier steht, was an diesem Tag gemessen wurde, und nicht mehr.',
    ],
    notes: 'Notizen',
    signatures: 'Übergeben',
    tuner: 'Abstimmer',
    customer: 'Kunde',
    date: 'Datum',
  },
};

export function handoverPhrases(language: Language): HandoverPhrases {
  return phrases[language];
}
