import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import { faintWind } from '../faint-wind.ts';

const missingField = {
  gearRatios: 'die Gangübersetzungen',
  finalDrive: 'die Achsübersetzung',
  radius: 'den Abrollradius oder die Reifengröße',
  gear: 'den Gang des Zuges',
} as const;
const unknownField = {
  gearRatios: 'die Gangübersetzungen sind',
  finalDrive: 'die Achsübersetzung ist',
  radius: 'Abrollradius und Reifengröße sind',
  gear: 'der Gang des Zuges ist',
} as const;
const unusable = {
  'no-number': 'keine Zahl',
  zeros: 'nichts als Nullen',
  'below-zero': 'meist null oder weniger',
  'one-number': 'durchweg ein und dieselbe Zahl',
  'too-much': 'mehr, als je ein Auto leistet',
} as const;
const signal = { 'engine-speed': 'Drehzahl', 'vehicle-speed': 'Fahrgeschwindigkeit' } as const;

export const powerProblems: ProblemWordsOf<'power'> = {
  'power/no-speed': () => ({
    message: 'Es ist weder die Drehzahl noch die Fahrgeschwindigkeit aufgezeichnet.',
    remedy: 'Die Drehzahl aufzeichnen oder ihre Spalte zuordnen.',
  }),
  'power/no-gearing': (f) => ({
    message: `Nur die Drehzahl ist aufgezeichnet, und ${unknownField[f.missing]} nicht bekannt.`,
    remedy: `Beim Auto ${missingField[f.missing]} eintragen oder auch die Fahrgeschwindigkeit aufzeichnen.`,
  }),
  'power/no-engine-speed': (f) => ({
    message: `Nur die Fahrgeschwindigkeit ist aufgezeichnet, und ${unknownField[f.missing]} nicht bekannt; daher ergibt sich keine Drehzahl.`,
    remedy: `Beim Auto ${missingField[f.missing]} eintragen oder auch die Drehzahl aufzeichnen.`,
  }),
  'power/no-dyno-reading': () => ({
    message: 'Der Ort ist ein Prüfstand, aber weder Leistung noch Drehmoment ist aufgezeichnet.',
    remedy: 'Die Aufzeichnung des Prüfstands einlesen oder angeben, dass auf der Straße gefahren wurde.',
  }),
  'power/dyno-reading-unusable': (f) => ({
    message: `In Spalte „${f.column}“ steht im Zug ${unusable[f.why]}, und keine andere nennt Leistung oder Drehmoment.`,
    remedy:
      'Die Aufzeichnung mit Leistung oder Drehmoment neu ausgeben oder unter Spalten nachsehen, wofür jede genommen wurde.',
  }),
  'power/pull-too-short': (f, show) => ({
    message: `Der Zug hat ${show.number(f.samples)} brauchbare Drehzahl- oder Geschwindigkeitswerte in ${show.quantity(f.seconds, 'time', 1)}: zu wenig für eine Beschleunigung.`,
    remedy: 'Schneller aufzeichnen oder länger in einem höheren Gang fahren.',
  }),
  'power/not-accelerating': (f, show) => ({
    message: `Zwischen ${show.quantity(f.from_s, 'time')} und ${show.quantity(f.to_s, 'time')} steigt die Drehzahl kaum.`,
    remedy:
      'Anfang und Ende des Zuges prüfen; Leistung ergibt sich nur aus steigender Drehzahl bei Volllast.',
  }),
  'power/engine-too-fast': (f, show) => ({
    message: `Der Motor würde mit ${show.quantity(f.engineSpeed, 'engineSpeed')} drehen.`,
    remedy: 'Prüfen, welche Spalte die Drehzahl hält, ihre Einheit und die Übersetzungen.',
  }),
  'power/bad-air': (f, show) => ({
    message: {
      pressure: `${show.quantity(f.value, 'pressure')} kann nicht der Luftdruck sein.`,
      temperature: `${show.quantity(f.value, 'temperature')} kann nicht die Lufttemperatur sein.`,
      relativeHumidity: `${show.quantity(f.value, 'share', 0)} kann nicht die relative Luftfeuchte sein.`,
    }[f.field],
    remedy: 'Die Luft am Ort eintragen; den Luftdruck wie gemessen, nicht auf Meereshöhe umgerechnet.',
  }),
  'power/bad-tyre': (f) => ({
    message: `„${f.text}“ ist keine Reifengröße.`,
    remedy: 'Wie auf der Flanke schreiben: 225/45 R17.',
  }),
  'power/coast-down-too-short': (f, show) => ({
    message: `Der Ausrollversuch verliert ${show.quantity(f.speedDrop, 'speed')} in ${show.quantity(f.seconds, 'time', 0)} mit ${show.number(f.samples)} Werten: zu wenig für drei Beiwerte.`,
    remedy:
      'Auf ebener Straße im Leerlauf von hohem Tempo bis Schritttempo ausrollen lassen, in beiden Richtungen.',
  }),
  'power/coast-down-none': () => ({
    message:
      'In der Aufzeichnung rollt das Auto nirgends lange genug im Leerlauf: Motor im Leerlauf, Fuß vom Pedal, keine Bremse.',
    remedy:
      'Im Leerlauf von hohem Tempo bis Schritttempo ausrollen lassen oder die Sekunden der Versuche angeben.',
  }),
  'power/coast-down-too-many': (f, show) => ({
    message: `${show.number(f.rolls)} Ausrollversuche sind zu viele auf einmal; es gehen ${show.number(f.most)}.`,
    remedy: 'Nur die zählen lassen, die dafür gefahren wurden.',
  }),
  'power/coast-down-not-slowing': (f, show) => ({
    message: `Zwischen den Werten ${show.number(f.from)} und ${show.number(f.to)} wird das Auto nicht langsamer.`,
    remedy: 'Den Teil wählen, in dem das Auto im Leerlauf rollt.',
  }),
  'power/coast-down-no-fit': (f, show) => ({
    message: `Zu den ${show.number(f.samples)} Werten passt kein Fahrwiderstand.`,
    remedy:
      'Zu jedem Ausrollen die Richtung angeben, und auslassen, was Bremsen, Kuppeln oder eine eigene Steigung enthält.',
  }),
  'power/no-two-way': (f, show) => ({
    message: `Für den Mittelwert aus Hin und Rück braucht es Fahrten in beiden Richtungen; es sind ${show.number(f.out)} hin und ${show.number(f.back)} zurück.`,
    remedy: 'Dieselbe Strecke auch in der anderen Richtung fahren.',
  }),
  'power/no-common-band': () => ({
    message: 'Die Züge haben keinen gemeinsamen Drehzahlbereich.',
    remedy: 'Alle im selben Gang über dieselben Drehzahlen fahren.',
  }),
  'power/no-air-flow': () => ({
    message: 'Die Luftmasse ist nicht aufgezeichnet.',
    remedy: 'Sie aufzeichnen oder ihre Spalte zuordnen.',
  }),
};

export const powerNotes: NoteWordsOf<'power'> = {
  'power/default-drag-area': (f, show) =>
    `Luftwiderstandsfläche nicht angegeben: ${show.quantity(f.dragArea, 'area')} angenommen, wie üblich.`,
  'power/default-rolling': (f, show) =>
    `Rollwiderstandsbeiwert nicht angegeben: ${show.number(f.coefficient, 3)} angenommen, wie üblich.`,
  'power/default-efficiency': (f, show) =>
    `Wirkungsgrad des Antriebs nicht angegeben: ${show.quantity(f.efficiency, 'share', 0)} angenommen (82 bis 92 % nach Erfahrung); die Motorleistung ist damit nur grob.`,
  'power/default-slip': (f, show) =>
    `Reifenschlupf weder angegeben noch gemessen: ${show.quantity(f.slip, 'share', 1)} bei voller Kraft angenommen (1 bis 3 % nach Erfahrung).`,
  'power/default-air': (f, show) =>
    `Lufttemperatur oder Luftdruck nicht angegeben: für den Luftwiderstand ${show.number(f.density, 2)} kg/m³ angenommen.`,
  'power/default-humidity': (f, show) =>
    `Luftfeuchte nicht angegeben: für die Korrektur ${show.quantity(f.relativeHumidity, 'share', 0)} angenommen; sie kann deshalb um ${show.quantity(f.half, 'share', 1)} daneben liegen, das Band enthält das.`,
  'power/barometers-disagree': (f, show) =>
    `Der eingetragene Luftdruck, ${show.quantity(f.entered, 'pressure')}, ist nicht der aufgezeichnete, ${show.quantity(f.logged, 'pressure')}; die Korrektur nimmt den eingetragenen. Den Druck am Ort eintragen, nicht den des Wetterberichts, der auf Meereshöhe umgerechnet ist.`,
  'power/road-load-incomplete': () =>
    'Dem Fahrwiderstand aus dem Ausrollversuch fehlt ein Beiwert, daher wurde er nicht verwendet: alle drei eintragen.',
  'power/coast-down-one-way': (f, show) =>
    `Nur in einer Richtung gerollt: Steigung und Wind stecken in diesen Beiwerten. Die Intervalle von A und der Kräfte lassen die Steigung einer eben genannten Straße zu, um ${show.quantity(f.grade, 'share', 1)} (${show.quantity(f.force, 'force', 0)}), aber keinen Wind. In beiden Richtungen rollen.`,
  'power/coast-down-not-neutral': (f, show) =>
    `In ${f.file} war beim Rollen ab ${show.quantity(f.from_s, 'time', 0)} ein Gang eingelegt oder ein Fuß auf dem Pedal: Der Motor bremste oder trieb. Dieses Rollen weglassen.`,
  'power/coast-down-held-back': (f, show) =>
    `In ${f.file} hielt zwischen ${show.quantity(f.from_s, 'time', 0)} und ${show.quantity(f.to_s, 'time', 0)} etwas das Auto um ${show.quantity(f.force, 'force', 0)} stärker zurück: Bremse, Senke oder Böe. Die Anpassung hält es für Roll- und Luftwiderstand, und ihre Intervalle wissen davon nichts. Dieses Rollen weglassen oder vorher enden lassen.`,
  'power/coast-down-both-ways': (f, show) =>
    `Hin und Rück unterscheiden sich wie bei einer Steigung von ${show.difference(f.grade, 'share', 1)} und ${
      Math.abs(f.headwind) < faintWind
        ? 'kaum Wind'
        : `${show.quantity(Math.abs(f.headwind), 'speed', 0)} ${f.headwind < 0 ? 'Rückenwind' : 'Gegenwind'} auf dem Hinweg`
    }; beides ist abgezogen.`,
  'power/coast-down-beyond': (f, show) =>
    `Gerollt zwischen ${show.quantity(f.from, 'speed', 0)} und ${show.quantity(f.to, 'speed', 0)}. Eine Kraft darüber hinaus ist hochgerechnet: Sie gilt, soweit A, B und C dort gelten, und davon weiß ihr Intervall nichts.`,
  'power/coast-down-logs-differ': (f, show) =>
    `Von ${f.file} zu ${f.other} hat sich die Kraft in gleicher Richtung um ${show.differenceWithHalf(f.force, f.half, 'force')} verschoben, ${
      {
        'one-way': 'wie bei anderem Wind, anderer Strecke oder anderer Masse',
        alike: 'in beiden Richtungen gleich, wie bei anderer Masse, anderen Reifen oder anderer Luft',
        against:
          'in der einen nach oben, in der anderen nach unten, wie bei anderem Wind oder anderer Strecke',
      }[f.kind]
    }. Das Ergebnis ist der Mittelwert: noch einmal rollen, oder eine Aufzeichnung auslassen.`,
  'power/coast-down-two-speeds': () =>
    'Manche Aufzeichnungen enthalten das Tempo vom Satelliten, die anderen das der Räder; beide können um Prozente auseinanderliegen. In allen dasselbe aufzeichnen.',
  'power/coast-down-neutral-untold': () =>
    'Keine Drehzahl ist aufgezeichnet, also zeigt nichts, dass das Auto im Leerlauf rollte: Mit Gang und geschlossener Drossel bremst auch der Motor.',
  'power/level-assumed': () => 'Die Straße gilt als eben.',
  'power/wheel-inertia-not-counted': (f, show) =>
    `Trägheit der Räder nicht angegeben und nicht gerechnet; übliche Räder zählen wie ${show.quantity(f.share, 'share', 0)} der Masse, die Radleistung liegt also 2 bis 3 % zu tief.`,
  'power/engine-inertia-not-counted': () =>
    'Trägheit des Motors nicht angegeben und nicht gerechnet; die Motorleistung liegt etwas zu tief, am meisten in kleinen Gängen.',
  'power/radius-from-tyre': (f, show) =>
    `Abrollradius ${show.number(f.radius, 3)} m aus der Reifengröße ${f.tyre} berechnet.`,
  'power/gearing-from-speed': (f, show) =>
    `Übersetzung aus der Aufzeichnung: ${show.number(f.distancePerTurn, 3)} m Weg je Kurbelumdrehung${
      f.radius === null ? '' : `, die Reifen rollen also auf ${show.number(f.radius, 3)} m`
    }${f.overallRatio === null ? '' : `, ${show.number(f.overallRatio, 2)} davon je Radumdrehung`}.`,
  'power/slip-from-speed': (f, show) =>
    `Reifenschlupf aus den beiden Geschwindigkeiten: ${show.quantity(f.slip, 'share', 1)} bei voller Kraft.`,
  'power/speed-of-driven-wheels': (f, show) =>
    `Die beiden Geschwindigkeiten lassen den Reifen ${show.quantity(f.slip, 'share', 1)} Schlupf: Die Fahrgeschwindigkeit kann die angetriebener Räder sein, und die Leistung liegt dann um etwa das Doppelte des verborgenen Schlupfs zu hoch, 3 bis 4 % (erzeugte Fahrten). Ein Rad ohne Antrieb aufzeichnen oder Züge dieses Sensors nur untereinander vergleichen.`,
  'power/speeds-disagree': (f, show) =>
    `Die aufgezeichnete Fahrgeschwindigkeit weicht um ${show.difference(f.difference, 'share', 1)} von Drehzahl, Gang und Reifen ab; ihr wurde geglaubt. Übersetzungen, Reifengröße und Geschwindigkeitssignal prüfen.`,
  'power/engine-ahead-of-road': (f, show) =>
    `Die Drehzahl weicht im Zug um ${show.quantity(f.excess, 'share', 0)} von der Straße ab, mehr als Reifen unter Last schlupfen: Kupplung, Wandler oder Antriebsräder rutschen. Die Radleistung stammt allein aus der Fahrgeschwindigkeit; was rutscht, geht vorher verloren, die Motorleistung steht dort also zu niedrig. Ist es die Geschwindigkeit der durchdrehenden Räder, so stehen beide zu hoch.`,
  'power/speed-in-steps': (f, show) =>
    `Die ${signal[f.basis]} ist in Stufen von ${
      f.basis === 'engine-speed' ? show.quantity(f.step, 'engineSpeed') : show.quantity(f.step, 'speed', 1)
    } geschrieben.`,
  'power/speed-held': (f, show) =>
    `Die ${signal[f.basis]} wird nur alle ${show.quantity(f.interval, 'time')} neu gelesen; die Wiederholungen wurden weggelassen.`,
  'power/speed-late': (f, show) =>
    `Die Fahrgeschwindigkeit steht ${show.quantity(f.lag, 'time')} nach der Drehzahl in der Aufzeichnung; das ist berücksichtigt.`,
  'power/outliers-left-out': (f, show) =>
    `${show.number(f.count)} weit abseits liegende Werte wurden weggelassen.`,
  'power/grade-from-altitude': (f, show) =>
    `Steigung aus der aufgezeichneten Höhe: ${show.differenceWithHalf(f.grade, 2 * f.error, 'share', 1)}.`,
  'power/altitude-with-speed': (f, show) =>
    `Die aufgezeichnete Höhe geht mit dem Tempo, wie ein Barometer im Fahrtwind (sie zeigte ${show.difference(f.grade, 'share', 1)}); sie wurde nicht verwendet.`,
  'power/altitude-stands-still': () =>
    'Die aufgezeichnete Höhe ist im ganzen Zug ein und dieselbe Zahl; über eine Steigung sagt sie nichts.',
  'power/altitude-unit-untold': (f, show) =>
    `Nichts sagt, welche Einheit „${f.column}“ hat; in ${show.symbol(f.unit, 'length')} zeigte sie eine Steigung von ${show.difference(f.grade, 'share', 1)}. Sie wurde nicht verwendet: die Einheit unter Spalten setzen.`,
  'power/altitude-unclear': (f, show) =>
    `Die aufgezeichnete Höhe zeigt keine klare Steigung (${show.differenceWithHalf(f.grade, 2 * f.error, 'share', 1)}); sie wurde nicht verwendet.`,
  'power/pull-trimmed': (f, show) =>
    `${show.quantity(f.seconds, 'time')} an den Enden des Zuges, in denen die Drehzahl nicht stieg, wurden weggelassen.`,
  'power/torque-channel-not-used': (f) =>
    `Spalte „${f.column}“ wurde nicht für die Leistung verwendet: auf der Straße ist so ein Kanal eine Schätzung des Steuergeräts.`,
  'power/reading-left-aside': (f) =>
    `Spalte „${f.column}“ wurde nicht für die Leistung genommen: Im Zug steht darin ${unusable[f.why]}. ${
      f.instead === 'road'
        ? 'Die Leistung kommt stattdessen aus der Beschleunigung.'
        : 'Eine andere Spalte wurde genommen.'
    }`,
  'power/wheel-torque-read': (f, show) =>
    f.at === 'axle'
      ? `Das Drehmoment am Rad in Spalte „${f.column}“ gilt als das der Achse. Wäre es durch den Gang geteilt, wie Prüfstände es oft drucken, wäre die Leistung das ${show.number(f.ratio ?? 1, 1)}-fache.`
      : `Das Drehmoment am Rad in Spalte „${f.column}“ gilt als durch den Gang geteilt, wie Prüfstände es oft drucken. Wäre es das der Achse, wäre die Leistung ${
          f.ratio === null
            ? 'viel kleiner: Übersetzungen, Achsantrieb und Gang angeben'
            : `durch ${show.number(f.ratio, 1)} zu teilen`
        }.`,
  'power/reading-unit-assumed': (f, show) =>
    `Nichts sagt, welche Einheit „${f.column}“ hat; angenommen wurde ${show.symbol(f.unit, f.is)}, und die Leistung geht damit. Stimmt das nicht, unter Spalten setzen.`,
  'power/reading-late': (f, show) =>
    `Spalte „${f.column}“ hält noch ${show.quantity(f.lag, 'time')}, nachdem die Drehzahl zu fallen begann, die Hälfte ihres Werts: Sie ist geglättet oder kommt spät. Solange die Leistung steigt, steht sie zu niedrig; das Band enthält das. Die Glättung des Prüfstands so klein wie möglich stellen oder langsamer ziehen.`,
  'power/engine-reading': (f, show) =>
    `Spalte „${f.column}“ wurde als am Motor gemessen genommen: Die Radleistung ist ${show.quantity(f.efficiency, 'share', 0)} davon, und das Band enthält, wie wenig man das weiß. Meint der Prüfstand die Räder, unter Spalten so setzen.`,
  'power/dyno-speed-by-gear': () =>
    'Keine Drehzahl ist aufgezeichnet: Sie folgt aus Geschwindigkeit, Gang und Reifen, die auf Rollen schlupfen.',
  'power/dyno-correction-unknown': (f) =>
    `Spalte „${f.column}“ ist vielleicht schon vom Prüfstand korrigiert; dann hier keine Korrektur wählen.`,
  'power/ramp-inertia-added': (f, show) =>
    `Trägheit von ${show.quantity(f.inertia, 'inertia', 3)}, die der Prüfstand im Hochlauf weglässt, wurde dazugerechnet.`,
  'power/ramp-inertia-no-gear': () =>
    'Die Trägheit an der Antriebsachse wurde nicht zugeschlagen: Gänge, Achsübersetzung und Gang der Züge eintragen.',
  'power/correction-air-unknown': (f) =>
    `Nicht nach ${f.standard} korrigiert: Luftdruck oder Lufttemperatur ist nicht bekannt oder nicht glaubhaft.`,
  'power/correction-out-of-range': (f, show) => {
    const shown = {
      temperature: `Lufttemperatur ${show.quantity(f.value, 'temperature', 0)} liegt außerhalb ${show.quantity(f.from, 'temperature', 0)} bis ${show.quantity(f.to, 'temperature', 0)}`,
      dryPressure: `der Druck der trockenen Luft ${show.quantity(f.value, 'pressure')} liegt außerhalb ${show.quantity(f.from, 'pressure', 0)} bis ${show.quantity(f.to, 'pressure', 0)}`,
      factor: `der Faktor ${show.number(f.value, 3)} liegt außerhalb ${show.number(f.from, 2)} bis ${show.number(f.to, 2)}`,
    }[f.what];
    return `${f.standard} ist für diese Luft nicht gemacht: ${shown}. Nur mit Zügen desselben Tages vergleichen.`;
  },
  'power/correction-boosted': (f, show) =>
    `Aufgeladener Motor: wird der Ladedruck absolut geregelt, so hat die Regelung den Luftdruck schon ausgeglichen, und der wahre Faktor liegt zwischen 1 und ${show.number(f.factor, 3)}. ${
      {
        'ISO 1585':
          'ISO 1585 schließt aufgeladene Motoren ein; UN R85 lässt den Faktor 1 zu, wenn die Regelung die Luft ausgleicht.',
        'SAE J1349': 'Ältere SAE-Vorschriften nahmen Ottomotoren mit Turbolader mangels Daten aus.',
        'DIN 70020': 'DIN 70020 macht, soweit uns bekannt, keinen Unterschied für Aufladung.',
        none: '',
      }[f.standard]
    }`,
  'power/correction-boost-untold': (f, show) =>
    `Weder Ladedruck noch Saugrohrdruck ist aufgezeichnet. Ist der Motor aufgeladen und wird der Ladedruck absolut geregelt, so hat die Regelung den Luftdruck schon ausgeglichen, und der wahre Faktor nach ${f.standard} liegt zwischen 1 und ${show.number(f.factor, 3)}.`,
  'power/airflow-at-end': (f, show) =>
    `Die Luftmasse steht ab ${show.quantity(f.engineSpeed_rad_s, 'engineSpeed')} bei ${show.quantity(f.flow, 'massFlow')}, wie ein Messer am Ende seines Bereichs; dort wurde nichts verglichen. Ein Steuergerät, das danach Kraftstoff zumisst, läuft dort mager.`,
  'power/airflow-agrees': (f, show) =>
    `Die Luftmasse passt: Im Mittel des Zugs steht sie für ${show.quantity(f.air, 'power', 0)} am Motor, gefunden wurden ${show.quantity(f.power, 'power', 0)} (${show.quantity(f.ratio, 'share', 0)}).`,
  'power/airflow-disagrees': (f, show) =>
    `Die Luftmasse passt nicht: Im Mittel des Zugs steht sie für ${show.quantity(f.air, 'power', 0)} am Motor, gefunden wurden ${show.quantity(f.power, 'power', 0)} (${show.quantity(f.ratio, 'share', 0)}); üblich wären ${show.quantity(f.from, 'share', 0)} bis ${show.quantity(f.to, 'share', 0)}. Masse, Übersetzung und Kennlinie des Luftmassenmessers prüfen.`,
  'power/two-way-slope': (f, show) =>
    `Hin und zurück unterscheiden sich wie bei ${show.differenceWithHalf(f.grade, f.half, 'share', 1)} Steigung oder entsprechend viel Wind.`,
};
