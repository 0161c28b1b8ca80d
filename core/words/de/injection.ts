import type { FuelBasis, PracticeDefault, StrategyName } from '../../injection/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import type { Show } from '../show.ts';

const bases: Record<FuelBasis, string> = {
  power: 'Leistung und spezifischem Verbrauch',
  air: 'Hubraum, Liefergrad und Luft im Saugrohr',
  injectors: 'der geloggten Einspritzdauer',
};
const strategies: Record<StrategyName, string> = {
  'later-start': 'späterer Beginn',
  'full-beyond': 'Vollpunkt jenseits der Spitze',
  'by-hand': 'von Hand',
};
const defaults: Record<PracticeDefault, (value: number, show: Show) => string> = {
  fuelConsumption: (v, show) =>
    `Spezifischer Verbrauch mit ${show.quantity(v, 'massPerEnergy', 3)} angenommen`,
  volumetricEfficiency: (v, show) => `Liefergrad mit ${show.quantity(v, 'share', 0)} angenommen`,
  manifoldTemperature: (v, show) => `Luft im Saugrohr mit ${show.quantity(v, 'temperature', 0)} angenommen`,
  lambda: (v, show) => `Gemisch mit ${show.quantity(v, 'lambda', 2)} angenommen`,
  boostCurve: (v, show) =>
    `Angenommen, der Ladedruck steigt gleichmäßig bis ${show.quantity(v, 'engineSpeed', 0)} und bleibt dann`,
  pullDuration: (v, show) => `Angenommen, ein Zug dauert ${show.quantity(v, 'time', 0)}`,
  pullSpeeds: (v, show) => `Angenommen, ein Zug endet bei ${show.quantity(v, 'engineSpeed', 0)}`,
  peakSpeed: (v, show) =>
    `Angenommen, die Höchstleistung liegt am Ende des Zuges, ${show.quantity(v, 'engineSpeed', 0)}: dort ist der Bedarf am größten`,
  air: (v, show) => `Luftdruck mit ${show.quantity(v, 'pressure')} angenommen`,
  mix: (v, show) =>
    `Mischung nicht angegeben: mit ${show.quantity(v, 'share', 0)} Methanol nach eingegossenem Volumen gerechnet`,
  place: () => 'Ort der Düse nicht angegeben: mit dem Druck im Saugrohr gerechnet',
};

export const injectionProblems: ProblemWordsOf<'injection'> = {
  'injection/no-peak-boost': () => ({
    message: 'Der höchste Ladedruck fehlt oder liegt nicht über null.',
    remedy: 'Den Ladedruck eingeben, den der Motor erreichen soll, als Überdruck.',
  }),
  'injection/fuel-flow-unknown': (f) => ({
    message:
      f.asked === null
        ? 'Der Kraftstofffluss lässt sich noch nicht berechnen.'
        : `Der Kraftstofffluss lässt sich aus ${bases[f.asked]} nicht berechnen: das ist noch nicht bekannt.`,
    remedy:
      'Die Zielleistung eingeben, oder den Hubraum, oder Einspritzventile mit aufgezeichneter Auslastung.',
  }),
  'injection/start-above-full': (f, show) => ({
    message: `Der Beginn bei ${show.quantity(f.start, 'boost')} liegt nicht unter dem Vollpunkt bei ${show.quantity(f.full, 'boost')}.`,
    remedy: 'Den Beginn niedriger oder den Vollpunkt höher setzen.',
  }),
  'injection/ratio-profile-falls-back': (f, show) => ({
    message: `Im Verhältnisprofil folgt ${show.quantity(f.boost, 'boost')} auf ${show.quantity(f.previous, 'boost')}: der Ladedruck muss von Punkt zu Punkt steigen.`,
    remedy: 'Die Punkte nach Ladedruck ordnen, jeden Ladedruck nur einmal.',
  }),
  'injection/no-such-nozzle': (f) => ({
    message: `„${f.name}“ ist verbaut, steht aber nicht in der Düsenliste.`,
    remedy: 'Sie mit ihrem Nenndurchfluss in die Liste aufnehmen oder den Namen berichtigen.',
  }),
};

export const injectionNotes: NoteWordsOf<'injection'> = {
  'injection/fuel-from': (f, show) =>
    `Kraftstofffluss aus ${bases[f.basis]}: ${show.quantity(f.fuel, 'massFlow')} am Höchstpunkt.`,
  'injection/practice-default': (f, show) => `${defaults[f.what](f.value, show)} (Vorgabe).`,
  'injection/rule-of-thumb': (f, show) =>
    `Die Faustregel (gängige Praxis, ohne Quelle) sagt ${show.quantity(f.rule, 'volumeFlow')}; hier werden ${show.quantity(f.need, 'volumeFlow')} gebraucht, ${show.difference(f.difference, 'share', 0)}. Sie setzt Benzin bei etwa ${show.quantity(0.335 / 3.6e6, 'massPerEnergy', 3)} und 15 % einer Mischung von etwa ${show.quantity(930, 'density')} voraus.`,
  'injection/ratio-outside-window': (f, show) =>
    `${show.quantity(f.ratio, 'share', 0)} Fluid, bezogen auf die Kraftstoffmasse, liegen außerhalb der üblichen ${show.quantity(f.low, 'share', 0)} bis ${show.quantity(f.high, 'share', 0)} (gängige Praxis).`,
  'injection/ratio-hardly-seen': (f, show) =>
    `${show.quantity(f.ratio, 'share', 1)} Fluid, bezogen auf die Kraftstoffmasse, merkt der Motor kaum (gängige Praxis).`,
  'injection/ratio-quenches': (f, show) =>
    `${show.quantity(f.ratio, 'share', 0)} Fluid, bezogen auf die Kraftstoffmasse, ersticken die Verbrennung (gängige Praxis).`,
  'injection/nozzle-too-small': (f, show) =>
    `Zu klein: ${show.quantity(f.delivered, 'volumeFlow')} von ${show.quantity(f.need, 'volumeFlow')} Bedarf, das ${show.number(f.feed, 2)}-fache.`,
  'injection/nozzle-matched': (f, show) =>
    `Passt gut: ${show.quantity(f.delivered, 'volumeFlow')} bei einem Bedarf von ${show.quantity(f.need, 'volumeFlow')}, das ${show.number(f.feed, 2)}-fache.`,
  'injection/nozzle-oversize': (f, show) =>
    `Zu groß: ${show.quantity(f.delivered, 'volumeFlow')} bei einem Bedarf von ${show.quantity(f.need, 'volumeFlow')}, das ${show.number(f.feed, 2)}-fache.`,
  'injection/nozzle-much-too-large': (f, show) =>
    `Viel zu groß: ${show.quantity(f.delivered, 'volumeFlow')} bei einem Bedarf von ${show.quantity(f.need, 'volumeFlow')}, das ${show.number(f.feed, 2)}-fache.`,
  'injection/nozzle-several': (f, show) =>
    `${show.number(f.count)} Düsen: feiner abgestuft, und ebenso viele mehr, die verstopfen und dicht sein müssen.`,
  'injection/larger-of-two': (f, show) =>
    `Zwischen zwei Größen die größere mit späterem Beginn (gängige Praxis): ${f.smaller} brächte nur das ${show.number(f.smallerFeed, 2)}-fache des Bedarfs, diese das ${show.number(f.feed, 2)}-fache.`,
  'injection/none-large-enough': (f, show) =>
    `Keine Düse oder Kombination der Liste ist groß genug; die beste bringt das ${show.number(f.feed, 2)}-fache des Bedarfs. Ladedruck und Zündung müssen unter dem Ziel bleiben, bis es eine ist.`,
  'injection/same-mean-fluid': (f, show) =>
    `Über die Rampe im Mittel so viel wie eine passende Düse: Beginn bei ${show.quantity(f.start, 'boost')}, ${show.quantity(f.share, 'share', 0)} des höchsten Ladedrucks, beim ${show.number(f.feed, 2)}-fachen des Bedarfs.`,
  'injection/peak-need-met': (f, show) =>
    `Beginn bei ${show.quantity(f.start, 'boost')} und Vollpunkt bei ${show.quantity(f.full, 'boost')}, damit der Höchstdruck genau seinen Bedarf bekommt.`,
  'injection/mid-range-cost': (f, show) =>
    `Von ${show.quantity(f.from, 'boost')} bis ${show.quantity(f.to, 'boost')} fehlen ${show.quantity(f.shortfall, 'share', 0)}: die Mitte zahlt für den späteren Beginn.`,
  'injection/over-fed': (f, show) =>
    `Von ${show.quantity(f.from, 'boost')} bis ${show.quantity(f.to, 'boost')} kommt zu viel, bis zum ${show.number(f.most, 2)}-fachen des Bedarfs: das kostet Leistung.`,
  'injection/still-over-feeds': (f, show) =>
    `Auch so bekommt der Höchstdruck das ${show.number(f.feed, 2)}-fache seines Bedarfs. Eine kleinere Düse ist der saubere Weg.`,
  'injection/under-fed-at-peak': (f, show) =>
    `Beim Höchstdruck kommt nur das ${show.number(f.feed, 2)}-fache des Bedarfs an. Klopfen kann folgen: mit weniger Ladedruck planen.`,
  'injection/start-at-once': (f, show) =>
    `Wenn die Einspritzung beginnt, sind es ${show.quantity(f.fluidToFuel, 'share', 1)} der Kraftstoffmasse.`,
  'injection/rounded-to-step': (f, show) =>
    `Wie die Steuerung es annimmt, in Stufen von ${show.span(f.step, 'boost')}: Beginn ${show.quantity(f.start, 'boost')}, voll ${show.quantity(f.full, 'boost')}.`,
  'injection/controller-cannot': (f, show) =>
    `${f.what === 'start' ? 'Ein Beginn' : 'Ein Vollpunkt'} bei ${show.quantity(f.asked, 'boost')} liegt über dem, was die Steuerung annimmt, ${show.quantity(f.most, 'boost')}.`,
  'injection/start-moved-for-knock': (f, show) =>
    `Beginn von ${show.quantity(f.was, 'boost')} auf ${show.quantity(f.start, 'boost')} vorverlegt: ohne Fluid klopft dieser Motor bei ${show.quantity(f.limit, 'boost')}, und es braucht ${show.quantity(f.delay, 'time', 1)} bis zur Düse.`,
  'injection/fluid-too-late': (f, show) =>
    `Das Fluid kommt bei ${show.quantity(f.arrives, 'boost')} an, nach den ${show.quantity(f.limit, 'boost')}, bei denen dieser Motor ohne es klopft. Das Rückschlagventil an die Düse setzen, die Leitung kürzen oder den Ladedruck zurückhalten.`,
  'injection/fluid-never-arrives': (f, show) =>
    `Die Leitung (${show.quantity(f.volume, 'smallVolume')}) füllt sich in einem Zug nicht: es kommt gar nichts an. Mit einem Rückschlagventil an der Düse voll halten.`,
  'injection/coarse-drops': (f, show) =>
    `An der Düse bleiben nur ${show.span(f.pressureDifference, 'fluidPressure')} von ${show.span(f.full, 'fluidPressure')}: grobe Tropfen benetzen die Wand.`,
  'injection/recommended-because': (f, show) =>
    `Empfohlen: ${strategies[f.strategy]}. Der Bedarf wird im Mittel um ${show.quantity(f.misfeed, 'share', 0)} verfehlt, sonst um ${show.quantity(f.otherMisfeed, 'share', 0)}.`,
  'injection/recommended-tie': (f, show) =>
    f.isSame
      ? `Empfohlen: ${strategies[f.strategy]}. Mit dieser Düse führen beide Wege zu denselben Punkten.`
      : `Empfohlen: ${strategies[f.strategy]}. Beide Wege verfehlen den Bedarf im Mittel um etwa ${show.quantity(f.misfeed, 'share', 0)}; dieser ist beim Höchstdruck voll, so zeigt eine Flasche, was dort wirklich ankommt.`,
  'injection/recommended-only': (f) =>
    `Empfohlen: ${strategies[f.strategy]}. Ein oder Aus lässt keine andere Wahl.`,
  'injection/recommended-for-drops': (f) =>
    `Empfohlen: ${strategies[f.strategy]}. Eine gestreckte Rampe bremst die Pumpe, bis weniger als der halbe Druck bleibt, und die Tropfen werden grob (gängige Praxis).`,
  'injection/full-meets-need': (f, show) =>
    `Der Durchfluss folgt der Pumpendrehzahl nicht linear, so kommt am Höchstpunkt das ${show.number(f.peakFeed, 2)}-fache des Bedarfs; ein Vollpunkt bei ${show.quantity(f.full, 'boost')} träfe ihn. Zuerst in eine Flasche erproben.`,
  'injection/start-above-peak': (f, show) =>
    `Ein Beginn bei ${show.quantity(f.start, 'boost')} liegt über dem Höchstdruck, ${show.quantity(f.peak, 'boost')}: die Einspritzung beginnt nie.`,
  'injection/boost-alone-over-feeds': (f, show) =>
    `Nur nach Ladedruck bemessen kennt die Einspritzung die Drehzahl nicht: bei ${show.quantity(f.engineSpeed_rad_s, 'engineSpeed')} bringt sie das ${show.number(f.most, 1)}-fache des Bedarfs. Nach Einspritzdauer oder Luftmasse bemessen folgt sie dem Kraftstoff.`,
  'injection/spray-alone': () =>
    'Einspritzung allein bringt keine Leistung oder kostet etwas, bis Ladedruck oder Zündung den gewonnenen Spielraum nutzen.',
  'injection/power-costs-where': (f, show) =>
    `Zu viel von ${show.quantity(f.from, 'engineSpeed')} bis ${show.quantity(f.to, 'engineSpeed')}, bis zum ${show.number(f.most, 2)}-fachen des Bedarfs: dort nach dem Verlust sehen.`,
  'injection/guide-later-start': (f, show) =>
    `Zuerst: später beginnen, statt bei ${show.quantity(f.from, 'boost')} bei ${show.quantity(f.to, 'boost')}, und noch einmal fahren.`,
  'injection/guide-smaller-nozzle': (f, show) =>
    `Dann: eine kleinere Düse, ${f.choice}, ${show.quantity(f.delivered, 'volumeFlow')}, das ${show.number(f.feed, 2)}-fache des Bedarfs.`,
  'injection/guide-no-smaller-nozzle': () =>
    'Dann: eine kleinere Düse; auf der Liste ist keine kleiner und noch groß genug.',
  'injection/guide-use-the-room': (f, show) =>
    `Oder den Spielraum nutzen: Ladedruck in kleinen Stufen${f.boost === null ? '' : ` bis ${show.quantity(f.boost, 'boost')}`}, dann Zündung, jeden Schritt für sich gefahren und beurteilt. Beides kann den Motor in Sekunden zerstören: beim ersten Anzeichen von Klopfen aufhören.`,
  'injection/tank-empties': (f, show) =>
    `Der Tank reicht bis zur Reserve für ${show.number(f.pulls, 1)} Züge: das Nachfüllen einplanen.`,
  'injection/reserve-too-small': (f, show) =>
    `Die Reserve von ${show.quantity(f.reserve, 'tankVolume', 2)} ist weniger als zwei Züge zu ${show.quantity(f.perPull, 'smallVolume')}: die Leuchte kommt zu spät.`,
  'injection/refill-differs': (f, show) =>
    `Das Nachgefüllte weicht um ${show.difference(f.difference, 'share', 0)} vom Plan ab: ${show.quantity(f.used, 'tankVolume', 2)} verbraucht, ${show.quantity(f.planned, 'tankVolume', 2)} geplant. Vor dem nächsten Zug nach einem Leck oder einer verstopften Düse suchen.`,
  'injection/refill-agrees': (f, show) =>
    `Das Nachgefüllte stimmt auf ${show.difference(f.difference, 'share', 0)} mit dem Plan überein: ${show.quantity(f.used, 'tankVolume', 2)} verbraucht, ${show.quantity(f.planned, 'tankVolume', 2)} geplant.`,
  'injection/endurance-from-log': (f, show) =>
    `Fluid je Zug aus dem aufgezeichneten Durchfluss, ${f.pulls === 1 ? 'ein Zug' : `${f.pulls} Züge`}: ${show.quantity(f.perPull, 'smallVolume')}; geplant ${show.quantity(f.planned, 'smallVolume')}.`,
  'injection/log-differs': (f, show) =>
    `Ein aufgezeichneter Zug brauchte ${show.quantity(f.perPull, 'smallVolume')}, ${show.difference(f.difference, 'share', 0)} gegenüber dem Plan. Entweder mit anderem Ladedruck oder anderen Punkten gefahren, oder eine Düse verstopft oder eine Leitung leckt.`,
  'injection/fallback': (f, show) =>
    f.from === 'sound'
      ? `Ohne Fluid auf ${show.quantity(f.boost, 'boost')} zurückfallen, den Ladedruck, den dieser Motor ohne es klopffrei gezeigt hat, und auf die Zündung dazu. Bei niedrigem Ladedruck erproben, bevor man sich darauf verlässt.`
      : `Ohne Fluid auf ${show.quantity(f.boost, 'boost')} zurückfallen, eine Stufe unter dem Punkt, an dem dieser Motor klopfte, und auf die Zündung dazu. Bei niedrigem Ladedruck erproben, bevor man sich darauf verlässt.`,
  'injection/fallback-unknown': () =>
    'Von diesem Motor ohne Fluid ist nichts bekannt, ein Rückfallpunkt lässt sich nicht nennen. Zuerst einen Ausgangsstand ohne Einspritzung fahren.',
  'injection/fallback-quickly': (f, show) =>
    `Der Rückfall muss innerhalb von ${show.quantity(f.seconds, 'time', 1)} nach verlorenem Durchfluss oder Druck greifen; ein Tankschwimmer allein ist zu langsam (gängige Praxis).`,
};
