import type { ChargeDefault } from '../../charge/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import type { Show } from '../show.ts';

const missing = {
  displacement: 'Der Hubraum',
  compressionRatio: 'Das Verdichtungsverhältnis',
  octane: 'Die Oktanzahl des Benzins',
  engineSpeed: 'Die Motordrehzahl',
  boost: 'Der Ladedruck',
} as const;

const defaults: Record<ChargeDefault, (value: number, show: Show) => string> = {
  compressorEfficiency: (v, show) =>
    `Wirkungsgrad des Verdichters zu ${show.quantity(v, 'share', 0)} angenommen`,
  coolerEffectiveness: (v, show) =>
    `Wirksamkeit des Ladeluftkühlers zu ${show.quantity(v, 'share', 0)} angenommen`,
  coolerLoss: (v, show) => `Druckverlust des Ladeluftkühlers zu ${show.span(v, 'boost')} angenommen`,
  ambientTemperature: (v, show) => `Luft des Tages zu ${show.quantity(v, 'temperature', 0)} angenommen`,
  barometer: (v, show) => `Luftdruck zu ${show.quantity(v, 'pressure')} angenommen`,
  relativeHumidity: (v, show) => `Relative Feuchte zu ${show.quantity(v, 'share', 0)} angenommen`,
  volumetricEfficiency: (v, show) => `Liefergrad zu ${show.quantity(v, 'share', 0)} angenommen`,
  intakeClosing: (v, show) =>
    `Schluss des Einlassventils ${show.quantity(v, 'angle', 0)} nach dem unteren Totpunkt angenommen`,
  compressionRatio: (v, show) => `Verdichtungsverhältnis zu ${show.number(v, 1)} angenommen`,
  rodRatio: (v, show) => `Pleuel zum ${show.number(v, 1)}-fachen des Kurbelradius angenommen`,
  octane: (v, show) => `Oktanzahl des Benzins zu ${show.number(v)} angenommen`,
  lambda: (v, show) => `Gemisch zu ${show.quantity(v, 'lambda', 2)} angenommen`,
  spark: (v, show) =>
    `Zündung am gezeigten Punkt zu ${show.quantity(v, 'angle', 0)} vor dem oberen Totpunkt angenommen`,
};

export const chargeProblems: ProblemWordsOf<'charge'> = {
  'charge/pressure-not-positive': (f, show) => ({
    message: `${show.quantity(f.pressure, 'pressure')} ist kein absoluter Druck.`,
    remedy: 'Drücke der Luft absolut eingeben, den Ladedruck als Überdruck.',
  }),
  'charge/humidity-outside': (f, show) => ({
    message: `Eine relative Feuchte von ${show.quantity(f.relativeHumidity, 'share', 0)} gibt es nicht.`,
    remedy: 'Zwischen 0 und 100 % eingeben.',
  }),
  'charge/pressure-ratio-below-one': (f, show) => ({
    message: `Der Verdichter würde den Druck senken, von ${show.quantity(f.inlet, 'pressure')} auf ${show.quantity(f.outlet, 'pressure')}.`,
    remedy: 'Luftdruck und Ladedruck prüfen: Ladedruck ist Überdruck gegenüber der Luft des Tages.',
  }),
  'charge/share-outside': (f, show) => ({
    message: `${f.what === 'compressorEfficiency' ? 'Einen Verdichterwirkungsgrad' : 'Eine Kühlerwirksamkeit'} von ${show.quantity(f.share, 'share', 0)} gibt es nicht.`,
    remedy: 'Zwischen 0 und 100 % eingeben: üblich sind 65 bis 75 %.',
  }),
  'charge/loss-above-pressure': (f, show) => ({
    message: `Der Kühler würde ${show.span(f.loss, 'pressure')} von ${show.quantity(f.pressure, 'pressure')} kosten.`,
    remedy: `Nur den Verlust über den Kühler eingeben: üblich sind ${show.span(3e3, 'pressure')} bis ${show.span(15e3, 'pressure')}.`,
  }),
  'charge/colder-than-known': (f, show) => ({
    message: `Mit Fluid von ${show.quantity(f.fluidOverAir, 'share')} der Luftmasse fiele die Ladung unter ${show.quantity(f.lowest, 'temperature', 0)}.`,
    remedy: 'Fluidmenge und Luft des Tages prüfen.',
  }),
  'charge/engine-number-missing': (f) => ({
    message: `${missing[f.what]} fehlt.`,
    remedy: 'In den Fahrzeugdaten eingeben: Wärme und Klopfabstand brauchen es.',
  }),
  'charge/spark-outside': (f, show) => ({
    message: `Eine Zündung ${show.quantity(f.spark, 'angle', 0)} vor dem oberen Totpunkt liegt außerhalb dessen, was die Klopfrechnung abdeckt.`,
    remedy: 'Zwischen 20° nach und 60° vor dem oberen Totpunkt eingeben.',
  }),
};

export const chargeNotes: NoteWordsOf<'charge'> = {
  'charge/air-is-full': (f, show) =>
    `Bei ${show.quantity(f.temperature, 'temperature', 0)} ist die Luft gesättigt: ${show.quantity(f.evaporatedShare, 'share', 0)} des Fluids sind verdunstet, mehr bliebe flüssig.`,
  'charge/drops-outlive-the-way': (f, show) =>
    `Der mittlere Tropfen braucht ${Number.isFinite(f.lifetime) ? show.quantity(f.lifetime, 'time') : 'unendlich lange'}, sein Weg zum Ventil dauert ${show.number(f.residence * 1e3)} ms: etwa ${show.quantity(f.share, 'share', 0)} des Fluids haben davor Zeit zu verdunsten, der Rest kühlt im Zylinder oder benetzt die Wand.`,
  'charge/drop-size-practice': (f, show) =>
    `Mittlere Tropfengröße zu ${show.number(f.diameter * 1e6)} µm angenommen (Praxis: 50 bis 150).`,
  'charge/way-unknown': (f, show) =>
    `Weg von der Düse zum Ventil nicht angegeben: wie an dieser Stelle üblich angenommen, ${show.number(f.residence * 1e3)} ms.`,
  'charge/practice-default': (f, show) => `${defaults[f.what](f.value, show)} (Vorgabe).`,
  'charge/sensor-reads-wet': () =>
    'Tropfen erreichen das Ventil: ein Temperaturfühler hinter der Düse zeigt seine nasse Oberfläche, nicht die Ladung.',
  'charge/spray-before-cooler': () =>
    'Vor dem Kühler gesprüht verdunstet in heißer Luft viel, lässt dem Kühler aber weniger zu tun und kann sich darin sammeln.',
  'charge/spray-before-compressor': () =>
    'Vor dem Verdichter gesprüht sinkt dessen Arbeit; Tropfen schleifen an den Schaufeln von Turbo- und Radialverdichtern.',
  'charge/octane-outside-correlation': (f, show) =>
    `Oktanzahl ${show.number(f.octane)} liegt außerhalb der 80 bis 100, für die die Klopfbeziehung gemacht ist: der Abstand ist unsicherer, als seine Spanne sagt.`,
  'charge/headroom-is-relative': (f, show) =>
    f.isKnockLimited
      ? `Gerechnet von ${show.quantity(f.boost, 'boost')}, wo dieser Motor geklopft hat: der geschätzte Spielraum reicht bis an dieselbe Grenze, also darunter bleiben.`
      : `Gerechnet von ${show.quantity(f.boost, 'boost')}, wo dieser Motor ohne Klopfen lief: der geschätzte Spielraum bringt ihn auf denselben Abstand, wo die Grenze auch liegen mag.`,
  'charge/headroom-capped': (f, show) =>
    f.what === 'spark'
      ? `Mehr als ${show.quantity(f.at, 'angle', 0)} Zündung werden nicht behauptet, was die Rechnung auch sagt.`
      : `Mehr als ${show.quantity(f.at, 'boost')} Ladedruck werden nicht behauptet, was die Rechnung auch sagt.`,
};
