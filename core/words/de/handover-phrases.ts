import type { HandoverPhrases } from '../en/handover-phrases.ts';

export const handoverPhrases: HandoverPhrases = {
  title: 'Übergabe',
  invented: 'Erfundenes Beispiel: Dieses Auto, diese Menschen und diese Messungen gibt es nicht.',
  forCustomer: 'Für',
  byShop: 'Übergeben von',
  page: 'Seite',
  number: 'Nr.',
  logo: 'Logo',
  unknown: 'nicht notiert',
  notMeasured: 'nicht gemessen',
  none: 'keine',
  yes: 'ja',
  no: 'nein',
  before: 'vorher',
  after: 'nachher',

  gained: (size, low, high) =>
    `An den Rädern hat das Auto ${size} gewonnen, mit 95 % Sicherheit zwischen ${low} und ${high}.`,
  lost: (size, low, high) =>
    `An den Rädern hat das Auto ${size} verloren, mit 95 % Sicherheit zwischen ${low} und ${high}.`,
  noDifference: (effect, low, high) =>
    `An den Rädern ist kein Unterschied belegt: ${effect}, mit 95 % Sicherheit zwischen ${low} und ${high}.`,
  wholeNone: 'Es gibt noch keine zwei gemessenen Stände zum Vergleich, also wird nichts behauptet.',
  wholeMeans:
    'Von der ersten Messung bis zum Stand bei Übergabe, über die Drehzahlen, die alle Züge gemeinsam haben.',
  intervalOf: (low, high) => `${low} bis ${high}`,
  effectOfAll: 'Alle Änderungen zusammen',
  peakPower: 'Höchste Radleistung',
  peakTorque: 'Höchstes Drehmoment an den Rädern',
  wasBefore: (value) => `vorher ${value}`,
  at: (value, speed) => `${value} bei ${speed}`,

  powerChart: 'Leistung vorher und nachher',
  wheelPower: 'Radleistung',
  wheelTorque: 'Drehmoment an den Rädern, bezogen auf die Motordrehzahl',
  engineSpeed: 'Motordrehzahl',
  difference: (unit) => `Unterschied, ${unit}, 95-%-Band der ganzen Kurve`,
  provenBar: 'belegt',
  chartDescription: (before, after) =>
    `Radleistung über der Motordrehzahl, ${before} gegen ${after}, darunter der Unterschied.`,
  torqueDescription: (before, after) =>
    `Drehmoment an den Rädern, bezogen auf die Motordrehzahl, ${before} gegen ${after}.`,
  chartReading:
    'Gestrichelt ist vorher, durchgezogen ist nachher. Das Band um jede Linie zeigt, wo ihr Mittel mit 95 % Sicherheit liegt.',
  provenReading: 'Der Balken unter dem Bild zeigt die Drehzahlen, bei denen der Unterschied belegt ist.',
  noChart: 'Es gibt keine zwei gemessenen Stände, deren Kurven sich zeichnen ließen.',

  asLeft: 'Die Einstellungen bei Übergabe',
  controlGroup: 'Motorsteuerung',
  sprayGroup: 'Einspritzung',
  boostSet: 'Ladedruck, wie eingestellt',
  boostSeen: 'Ladedruck, höchster der letzten Züge',
  boostApart: (seen, set) =>
    `Die letzten Züge zeigten ${seen} Ladedruck, eingestellt waren ${set}. Vor der nächsten Volllast die Ladedruckregelung prüfen lassen.`,
  spark: 'Zündung gegenüber der ersten Messung',
  sparkNone: 'wie bei der ersten Messung',
  sparkStep: (size, where) => `${size}${where === '' ? '' : ` ${where}`}`,
  ofChange: (entry) => `davon mit Änderung ${entry}`,
  mixture: 'Gemischziel bei Volllast',
  sprayStart: 'Einspritzung beginnt bei',
  sprayFull: 'Einspritzung voll bei',
  sprayOff: 'Die Einspritzung ist aus.',
  sprayApart: (ledger, setup) =>
    `Nach den Notizen des Tages beginnt die Einspritzung bei ${ledger}, nach dem Datenblatt bei ${setup}. Beim Abstimmer nachfragen, was im Steuergerät steht.`,
  nozzle: 'Düse',
  nozzleRated: (name, flow, pressure) => `${name}: ${flow} bei ${pressure}`,
  nozzlePlace: 'Wo sie sprüht',
  metering: 'Dosiert durch',
  meteringOf: (how, by) => `${how}, nach ${by}`,
  pumpPressure: 'Gehaltener Pumpendruck',
  flowAtPeak: 'Fluss bei höchstem Ladedruck, gerechnet',
  fluidMix: 'Fluid',
  sparkTables: 'Zündung, Zelle für Zelle',
  sparkTable: (name) => `Änderung der Tabelle ${name} in Grad`,
  sparkTableLead: (name, date, cells) =>
    `Grad, um die sich die Tabelle „${name}“ bei Übergabe von der am ${date} gelesenen unterscheidet: ${cells} ${cells === 1 ? 'Zelle' : 'Zellen'}. Plus ist früher, ein Punkt unverändert, und was nicht gezeigt ist, ist ebenfalls unverändert.`,
  sparkTableSame: (name, date) => `Die Tabelle „${name}“ ist Zelle für Zelle die am ${date} gelesene.`,
  sparkTableWithout: (numbers, count) =>
    count === 1
      ? `Änderung ${numbers} wurde ohne ihre Zellen notiert: ob diese Tabelle sie enthält, sagt die Sitzung nicht.`
      : `Die Änderungen ${numbers} wurden ohne ihre Zellen notiert: ob diese Tabelle sie enthält, sagt die Sitzung nicht.`,
  sparkTableOpen: 'Die Tabelle enthält eine Änderung, die in keinem Eintrag des Tages steht.',
  loadAxis: { absolute: 'Saugrohrdruck', gauge: 'Ladedruck', throttle: 'Drosselklappe' },
  tablesNone: 'In dieser Sitzung sind keine Tabellen des Motorsteuergeräts abgelegt.',

  changes: 'Was jede Änderung gebracht hat',
  change: 'Änderung',
  pulls: 'Züge',
  worth: 'Wirkung auf die Radleistung',
  baselineLevel: (value) => `${value} im Mittel`,
  notDriven: 'Nicht gefahren.',
  notJudged: 'nicht zu beurteilen',
  droppedMark: 'verworfen',
  stillHold: (numbers) =>
    `Alle zusammen beurteilt, sodass die ganze Liste in einer von zwanzig Sitzungen irrt (Abgleich nach Holm), halten diese Aussagen weiter: ${numbers}.`,
  noneHold: 'Alle zusammen beurteilt (Abgleich nach Holm) hält keine dieser Aussagen für sich.',
  holdNot: (numbers) => `Diese halten in der Menge nicht und brauchen mehr Züge: ${numbers}.`,
  leftOut: (count) =>
    count === 1
      ? 'Eine Änderung des Tages ist hier nach Wahl des Abstimmers nicht gezeigt.'
      : `${count} Änderungen des Tages sind hier nach Wahl des Abstimmers nicht gezeigt.`,
  parts: 'Woher es kommt',
  part: 'Art der Änderung',
  partKinds: {
    spray: 'Einspritzung',
    boost: 'Ladedruck',
    spark: 'Zündung',
    mixture: 'Gemisch',
    fluid: 'Fluid',
    other: 'Anderes',
    nothing: 'Noch einmal gefahren',
    'not-judged': 'Ein Schritt, der sich für sich nicht beurteilen ließ',
  },
  partsBand:
    'Hier ist jeder Stand über die Drehzahlen gerechnet, die alle gemeinsam haben; ein Wert kann darum ein wenig von der Liste oben abweichen.',
  partEntries: 'Änderungen',
  wholeRow: 'Alles zusammen',
  notJudgedWhy:
    'Bei dem Schritt, der sich nicht beurteilen ließ, hat sich noch etwas bewegt: Die Leistung ist da, aber niemand kann sagen, was von beidem sie gebracht hat.',

  dropped: 'Versucht und verworfen',
  droppedNone: 'Nichts, was versucht wurde, ist verworfen worden.',
  droppedLead:
    'Das wurde gefahren und nicht behalten. Es steht hier, damit es niemand unwissend noch einmal versucht.',

  gates: 'Abbruchregeln, und wie nahe der Motor ihnen kam',
  gatesLead:
    'Jede Regel hat eine Grenze, an der der Abstimmer aufhört. „Des Weges“ sagt, wie weit der Motor darauf zuging: 100 % ist an der Grenze.',
  gate: 'Was beobachtet wurde',
  limit: 'Abbruchregel',
  below: (limit) => `unter ${limit}`,
  atLeast: (limit) => `mindestens ${limit}`,
  last: 'Bei Übergabe',
  closest: 'Am nächsten, am Tag',
  ofTheWay: 'Des Weges',
  inChange: 'Bei Änderung',
  unwatched: 'kein Sensor in den Aufzeichnungen',
  gateStates: { near: 'nahe der Grenze', closed: 'über der Grenze' },
  gatesNone: 'In dieser Sitzung gibt es keine Züge mit einer beobachteten Abbruchregel.',
  gatesClosed: (names) =>
    `Bei Übergabe über der Grenze: ${names}. In diesem Zustand fährt man nicht mit Volllast.`,

  protection: 'Wenn das Fluid ausfällt',
  fallback: 'Was dann geschehen muss',
  fallbackTo: (boost, seconds) =>
    `Die Regelung muss innerhalb von ${seconds} nach dem Ausfall von Fluss oder Druck auf ${boost} Ladedruck zurückgehen und auf die Zündung, die dazu gehört.`,
  fallbackUnknown:
    'Nicht bekannt: Bei keinem Ladedruck wurde gezeigt, dass dieser Motor ohne Fluid klopffrei läuft, also lässt sich kein Rückfallwert nennen. Nicht mit Volllast fahren, bevor einer eingestellt und erprobt ist.',
  fallbackWired: 'Rückfall an Fluss oder Druck angeschlossen',
  fallbackProven: 'Rückfall im Versuch gesehen',
  lowLevelWired: 'Füllstandsleuchte verbaut',
  guard: 'Normaler Fluss und Druck, für die Überwachung im Motorsteuergerät',
  guardLead:
    'Außerhalb dieser Grenzen muss bei Volllast der Rückfall kommen. Drücke hinter der Pumpe, über Umgebung.',
  guardNone: 'Grenzen ließen sich nicht ausrechnen: Im Datenblatt fehlt, was sie brauchen.',
  boost: 'Ladedruck',
  flow: 'Fluss',
  lowest: 'niedrigster',
  usual: 'üblich',
  highest: 'höchster',
  pressure: 'Druck',
  light: 'Wenn die Füllstandsleuchte angeht',
  lightLines: {
    lift: 'Sofort vom Gas und keine Volllast mehr, bis der Tank gefüllt ist.',
    reserve: (pulls, volume) =>
      `Die Leuchte lässt ${volume} übrig, höchstens ${pulls} Volllastzüge. Der Rest ist für den Heimweg, nicht zum Aufbrauchen.`,
    reserveUnknown:
      'Wie viel beim Angehen der Leuchte übrig ist, ist nicht notiert; mit nichts mehr rechnen.',
    gently: (start) => `Verhalten fahren; unter ${start} Ladedruck verlangt der Motor kein Fluid.`,
    gentlyUnknown: 'Verhalten fahren, ohne Ladedruck.',
    refill: (mix) =>
      `Dasselbe Fluid einfüllen, ${mix}, und nichts anderes: Die Einstellungen passen zu keiner anderen Stärke.`,
    check:
      'Bleibt die Leuchte an oder zieht der Motor danach schlechter, klingelt er oder klingt er anders: keine Volllast, nachsehen lassen.',
  },

  fluid: 'Das Fluid: Nachfüllen, Winter, Lagerung',
  freezes: 'Eis bildet sich ab',
  freezesBelow: (value) => `irgendwo unter ${value}`,
  flash: 'Flammpunkt, vorsichtig geschätzt',
  flashNone: 'brennt nicht',
  density: 'Dichte bei 20 °C',
  tank: 'Tank',
  reserve: 'Rest, wenn die Leuchte angeht',
  perPull: 'Verbrauch eines Volllastzugs',
  perPullPlanned: (value) => `${value}, gerechnet`,
  perPullMeasured: (value, pulls) => `${value}, gemessen über ${pulls} Züge`,
  lasts: 'Ein Tank reicht, bis zur Leuchte',
  lastsPulls: (pulls) => `${pulls} Volllastzüge`,
  distance: 'Als Strecke',
  distanceAgreed: (distance, rate, hundred) => `etwa ${distance}, bei ${rate} Volllastzügen auf ${hundred}`,
  distanceExamples: (first, rate, hundred, others) =>
    `je nach Fahrer: ${first} bei ${rate} Volllastzügen auf ${hundred}, ${others}`,
  distanceExample: (distance, rate) => `${distance} bei ${rate}`,
  refillDiffers: (difference) =>
    `Die bisherigen Füllungen weichen davon um ${difference} ab: nach einem Leck oder einer verstopften Düse suchen.`,
  keepLog:
    'Jede Füllung notieren: Reicht ein Tank deutlich länger oder kürzer, ist etwas verstopft oder undicht.',
  winter: (freezes) =>
    `Winter: Ab ${freezes} verstopft Eis Leitung und Düse, und der Motor läuft ohne sein Fluid. Wo es so kalt werden kann, keine Volllast fahren oder eine andere Stärke festlegen und messen lassen. Selbst Alkohol zuzugeben verändert die Einstellung.`,
  winterUnknown: 'Winter: Bei welcher Temperatur dieses Fluid friert, ist nicht bekannt.',
  storage: {
    burns: (flash) =>
      `Lagerung: Seine Dämpfe können sich ab etwa ${flash} entzünden. Verschlossen und beschriftet, belüftet, fern von Flammen, Funken und heißen Teilen aufbewahren.`,
    plain: 'Lagerung: verschlossen, beschriftet, sauber und ohne Sonne.',
    methanol:
      'Methanol ist giftig, auch durch Haut und Atem, und kann blind machen. Beim Füllen Handschuhe und Brille; außer Reichweite von Kindern; nie in eine Getränkeflasche.',
    weakens:
      'Aus einem offenen Tank entweicht Alkohol, und die Mischung wird schwächer. Nach langem Stehen frisches Fluid nehmen.',
    law: 'Wie viel und wie gelagert und befördert werden darf, entscheidet das Recht vor Ort.',
  },

  car: 'Das Auto und sein Einbau',
  name: 'Auto',
  mass: 'Masse wie gefahren',
  massWith: (mass, half) => `${mass} ± ${half}`,
  engine: 'Motor',
  engineOf: (parts) => parts.join(', '),
  inText: (choice) => choice,
  cylinders: (count) => `${count} Zylinder`,
  compression: (ratio) => `Verdichtung ${ratio}:1`,
  fuel: 'Kraftstoff',
  octane: (ron, ethanol) => `${ron} ROZ${ethanol === null ? '' : `, ${ethanol} Ethanol nach Volumen`}`,
  fit: 'Durchsicht des Einbaus',
  fitPassed: (passed, all) => `${passed} von ${all} Punkten in Ordnung`,
  fitNone: 'nicht gemacht',
  fitToFix: 'In Ordnung zu bringen',
  fitUnanswered: 'In der Durchsicht nicht beantwortet',
  setupNone:
    'Das Datenblatt dieser Sitzung ist leer: Motor, Düse, Fluid und Tank sind nicht festgehalten, also fehlt hier, was darauf beruht.',

  measured: 'Wie gemessen wurde',
  day: 'Tag',
  place: 'Wo',
  dyno: 'Prüfstand',
  road: 'Gesperrte Straße',
  gear: 'Gang der Züge',
  air: 'Außenluft',
  barometer: 'Luftdruck',
  humidity: 'Relative Feuchte',
  grade: 'Steigung',
  correction: 'Leistung korrigiert nach',
  noCorrection: 'nicht auf Normwetter umgerechnet',
  correctionBy: (standard, low, high) =>
    low === high ? `${standard}, Faktor ${low}` : `${standard}, Faktoren ${low} bis ${high}`,
  pullsCounted: 'Gezählte Züge',
  repeatability: 'Ein Zug wiederholt sich auf',
  repeats: (share) => `± ${share} (Standardabweichung)`,
  drift: 'Drift des Tages',
  driftPerPull: (share, half) => `${share} ± ${half} je Zug`,
  driftUnknown: 'nicht gemessen: kein früherer Stand wurde noch einmal gefahren',
  margin: 'Gilt als gleich',
  methodLines: [
    'Leistung heißt Radleistung aus der aufgezeichneten Beschleunigung, der Masse und den Fahrwiderständen; sie ist nicht die Leistung an der Kurbelwelle.',
    'Ein Zug ist eine Volllastbeschleunigung in einem Gang. Jeder Stand wurde mehrmals gefahren; ein Zug zählt einmal, gleich wie viele Messpunkte er hat.',
    'Eine Wirkung ist der Mittelwert nachher minus vorher über die Drehzahlen, die alle Züge gemeinsam haben.',
    'Die Zahl hinter ± ist die Hälfte des 95-%-Bereichs: Sie enthält die Streuung wiederholter Züge.',
    'Geändert wurde immer nur eines. Wo sich ein Zweites bewegt hat, wird keine Wirkung behauptet.',
  ],
  methodLineDyno:
    'Leistung heißt, was der Prüfstand an den Rädern aufgezeichnet hat; sie ist nicht die Leistung an der Kurbelwelle, und ein anderer Prüfstand zeigt anderes.',

  limits: 'Was nicht belegt ist',
  limitLines: {
    band: (f) =>
      `Über Drehzahlen außerhalb von ${f.from} bis ${f.to}, andere Gänge und Teillast wird nichts gesagt.`,
    level: (f) =>
      `Die Höhe der Leistung selbst ist auf etwa ± ${f.half} bekannt, so gut wie Masse und Fahrwiderstand; die Unterschiede eines Tages sind genauer bekannt.`,
    otherwise: (f) =>
      `Zwischen der ersten Messung und dem Stand bei Übergabe waren nicht nur die Einstellungen anders, und der Wert aller Änderungen zusammen trägt auch das: ${f.why}`,
    uncorrected: () =>
      'Die Leistung ist nicht auf Normwetter umgerechnet: An einem anderen Tag zeigt dasselbe Auto etwas anderes.',
    'not-judged': (f) => `Für Änderung ${f.number}, ${f.title}, wird keine Wirkung behauptet: ${f.why}`,
    undecided: (f) => `Änderung ${f.number}, ${f.title}, bleibt unentschieden.`,
    'single-pull': (f) => `Änderung ${f.number}, ${f.title}, beruht auf einem Zug.`,
    unwatched: (f) =>
      `Kein Sensor in den Aufzeichnungen hat beobachtet: ${f.names}. Darüber wird nichts gesagt.`,
    drift: () =>
      'Kein früherer Stand wurde noch einmal gefahren; eine langsame Drift des Tages kann in den letzten Änderungen stecken.',
    fit: (f) =>
      f.count === '1'
        ? 'In der Durchsicht des Einbaus ist 1 Punkt offen.'
        : `In der Durchsicht des Einbaus sind ${f.count} Punkte offen.`,
    lasting: () =>
      'Wie lange Motor und Getriebe bei diesen Einstellungen halten, wurde nicht gemessen und wird nicht versprochen.',
  },

  cautions: 'Bitte beachten',
  cautionLines: [
    'Die Einstellungen passen zu diesem Motor mit diesem Fluid in dieser Stärke. Ohne Fluid oder mit anderem können sie den Motor in Sekunden zerstören.',
    'Methanol ist giftig, auch durch Haut und Atem, und verbrennt mit einer Flamme, die bei Tag unsichtbar ist.',
    'Über Straßengebrauch, Abgas und die Lagerung von Alkoholkraftstoff entscheidet das Recht vor Ort; manche Arbeit braucht eine zugelassene Werkstatt.',
    'Hier steht, was an diesem Tag gemessen wurde, und nicht mehr.',
  ],
  note: 'Notizen',
  visit: {
    title: 'Gegen den letzten Besuch',
    otherTitle: 'Gegen einen anderen Besuch',
    other: 'Anderer Besuch',
    notEarlier:
      'Dieser andere Besuch wurde nicht vor dem dieses Blattes begonnen und ist also nicht der letzte: Die Tabelle ist andersherum zu lesen.',
    lead: (name, date) =>
      `Neben dem Besuch „${name}“ vom ${date}. Die Einstellungen sind die, mit denen das Auto jeweils übergeben wurde.`,
    what: 'Was',
    last: 'Letzter Besuch',
    now: 'Dieser Besuch',
    judged: 'Verglichen',
    states: {
      same: 'gleich',
      differs: 'anders',
      unknown: 'nicht bekannt',
      'own-origin': 'je über der eigenen ersten Messung',
    },
    names: {
      car: 'Auto',
      basis: 'Leistung bestimmt aus',
      correction: 'Wetterkorrektur',
      air: 'Dichte der Luft',
      gear: 'Gang der Züge',
      mass: 'Fahrfertige Masse',
      tyre: 'Rollradius der Reifen',
      place: 'Wo',
      boost: 'Ladedruck, wie eingestellt',
      spark: 'Zündung',
      mixture: 'Gemischziel',
      sprayStart: 'Einspritzung beginnt bei',
      nozzle: 'Düse',
      fluid: 'Fluid',
      fuel: 'Kraftstoff, ROZ',
      band: 'Drehzahlen, die beide Tage teilen',
      level: 'Höhe desselben Stands',
    },
    basisOf: {
      'engine-speed': 'Motordrehzahl',
      'vehicle-speed': 'Fahrgeschwindigkeit',
      'torque-channel': 'aufgezeichnetem Drehmoment',
      'power-channel': 'aufgezeichneter Leistung',
    },
    noCorrection: 'keine',
    sprayOff: 'Einspritzung aus',
    sparkCells: (count) =>
      count === 0
        ? 'Die Zündtabellen bei Übergabe sind Zelle für Zelle gleich.'
        : `Die Zündtabellen bei Übergabe unterscheiden sich in ${count} ${count === 1 ? 'Zelle' : 'Zellen'}.`,
    powers: {
      baseline: 'Erste Messung jedes Tages',
      'left-to-baseline': 'Damals übergeben, jetzt erste Messung',
      'as-left': 'Übergeben an jedem der Tage',
    },
    otherPowers: {
      baseline: 'Erste Messung jedes Besuchs',
      'left-to-baseline': 'Dort übergeben, hier erste Messung',
      'as-left': 'Übergeben bei jedem Besuch',
    },
    powerTitle: 'Mittlere Radleistung der beiden Tage',
    difference: 'Unterschied',
    over: (from, to) => `Mittel von ${from} bis ${to}, den Drehzahlen, die die Züge beider Tage teilen.`,
    notProven:
      'Kein Unterschied in dieser Tabelle ist belegt. Wie weit dasselbe Auto von Tag zu Tag anders misst, ist nicht bekannt; das ± enthält nur die Streuung innerhalb jedes Tages.',
    refused: (names) =>
      `Die Leistung der beiden Besuche wird nicht verglichen. Nicht an beiden Tagen gleich oder nicht bekannt: ${names}.`,
  },
  signatures: 'Übergeben',
  received:
    'Ich habe diese Zusammenfassung erhalten; Fluid, Füllstandsleuchte und Grenzen sind mir erklärt worden.',
  tuner: 'Abstimmer',
  customer: 'Kunde',
  date: 'Datum',

  fluidOf: (parts, basis) => `${parts.join(', ')} (${basis})`,
  substances: { water: 'Wasser', methanol: 'Methanol', ethanol: 'Ethanol' },
  bases: {
    poured: 'nach Volumen wie gegossen',
    finished: 'nach Volumen der Mischung',
    mass: 'nach Masse',
  },
};
