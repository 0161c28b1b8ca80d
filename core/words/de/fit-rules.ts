import type { FitRuleWords } from '../dictionary.ts';

export const fitRuleWords: FitRuleWords = {
  'after-the-blades': {
    question: 'Sprüht jede Düse hinter dem Turbo oder Radialverdichter?',
    reason: 'Tropfen, die auf schnelle Schaufeln treffen, tragen sie ab, und das Rad bekommt Unwucht.',
    remedy: 'Die Düse hinter den Verdichter setzen.',
  },
  'after-the-cooler': {
    question: 'Sprüht jede Düse hinter dem Ladeluftkühler?',
    reason:
      'Vor dem Kühler eingesprüht sammelt sich das Fluid darin, kommt schubweise und ungleich zu den Zylindern.',
    remedy: 'Die Düse hinter den Kühler setzen.',
  },
  'before-the-throttle': {
    question: 'Beim Turbo mit Kühler: sitzt die Düse hinter dem Kühler und vor der Drosselklappe?',
    reason: 'Dort hat sie Weg zum Mischen, und kein Unterdruck zieht an ihr.',
    remedy: 'Die Düse ins Rohr vor der Drosselklappe setzen, eine Handlänge oder mehr davor.',
  },
  'before-the-rotors': {
    question: 'Beim Roots- oder Schraubenlader: sprüht sie vor dem Lader?',
    reason: 'Langsame Rotoren vertragen die Tropfen, und das Fluid dichtet und kühlt sie.',
    remedy: 'Die Düse vor den Lader setzen; klein und deutlich hinter der Drosselklappe.',
  },
  'away-from-blow-off': {
    question: 'Sitzt die Düse hinter dem Abblasventil, oder bläst es nicht in den Motorraum ab?',
    reason: 'Ein offenes Ventil kurz hinter der Düse bläst brennbaren Nebel in den heißen Motorraum.',
    remedy: 'Die Düse hinter das Ventil setzen oder dessen Auslass in die Ansaugung zurückführen.',
  },
  'no-siphon': {
    question:
      'Liegen Tank und Pumpe unter der Einspritzstelle, oder schließt ein Absperrventil die Leitung, wenn die Pumpe steht?',
    reason:
      'Ein Tank über der Düse läuft über Nacht in die Ansaugung. Flüssigkeit im Zylinder hält den Kolben auf und verbiegt das Pleuel: Flüssigkeitsschlag.',
    remedy: 'Den Tank tiefer setzen oder ein stromlos geschlossenes Absperrventil einbauen.',
  },
  'no-vacuum-draw': {
    question:
      'Wo die Düse lange Unterdruck sieht (Konstantfahrt, Schub, Leerlauf): hält ein Ventil ihn von der Leitung fern?',
    reason:
      'Unterdruck saugt durch eine einfache Düse: die Ansaugung läuft im Leerlauf voll, ein Zylinder kann blockieren.',
    remedy:
      'Ein Rückschlagventil einbauen, das erst über dem tiefsten Unterdruck öffnet, oder ein Absperrventil.',
  },
  'check-valve': {
    question: 'Sitzt ein Rückschlagventil an der Düse, und zeigt sein Pfeil zum Motor?',
    reason:
      'Es hält die Leitung voll, damit das Fluid sofort kommt, und verhindert, dass der Ladedruck sie leer bläst.',
    remedy: 'Direkt an der Düse einbauen, Pfeil zum Motor.',
  },
  'pump-below-tank': {
    question: 'Liegt der Pumpeneinlass unter dem Tankauslass?',
    reason: 'Diese Pumpen drücken gut und saugen schlecht; mit Luft davor baut sich kein Druck auf.',
    remedy: 'Die Pumpe tiefer als den Tankauslass setzen, mit kurzer, weiter Saugleitung.',
  },
  'tank-away-from-heat': {
    question: 'Bleiben Tank und Leitungen fern von Auspuff, Turbo und anderen heißen Teilen?',
    reason: 'Warmer Alkohol gibt brennbaren Dampf ab; ein Leck auf ein heißes Teil ist ein Brand.',
    remedy: 'Verlegen oder abschirmen und die Entlüftung ins Freie führen.',
  },
  'filter-before-nozzle': {
    question: 'Sitzt zwischen Tank und Düse ein Filter, feiner als die Düsenbohrung?',
    reason:
      'Ein Korn verstopft eine Düse, und eine verstopfte sieht aus wie eine gute, bis der Motor klopft.',
    remedy: 'Einen Filter vor die Pumpe setzen und einen vor eine feine Düse.',
  },
  'hoses-pressure-tested': {
    question:
      'Sind alle Schlauchanschlüsse dicht, und hat die Leitung minutenlang vollen Pumpendruck gehalten?',
    reason: 'Ein Anschluss, der aufgeht, sprüht über den heißen Motor.',
    remedy:
      'Schläuche gerade schneiden, ganz einschieben, Druck halten und jede Stelle mit einem Tuch prüfen.',
  },
  'fuse-and-relay': {
    question: 'Hat die Pumpe eigene Sicherung und eigenes Relais, passend zu ihrem Strom?',
    reason: 'Eine blockierte Pumpe zieht ein Mehrfaches: ohne Sicherung brennt das Kabel.',
    remedy: 'Nahe der Batterie absichern, für den Nennstrom der Pumpe, mit passendem Kabel.',
  },
  'ignition-only': {
    question: 'Hat die Pumpe nur bei eingeschalteter Zündung Strom?',
    reason: 'Eine Pumpe, die bei stehendem Motor läuft, füllt die Ansaugung.',
    remedy: 'Ihr Relais von der Zündung schalten lassen.',
  },
  'primed-and-measured': {
    question: 'Ist das System entlüftet und sein Durchfluss in eine Flasche gemessen?',
    reason: 'Nur die Flasche sagt, was wirklich ankommt; Nenndaten und Etiketten nicht.',
    remedy:
      'Eine notierte Zeit lang in eine Messflasche sprühen, bei zwei Einstellungen oder mehr, und eingeben.',
  },
  'low-level-warning': {
    question: 'Meldet eine Warnung niedrigen Stand, wo der Fahrer sie sieht?',
    reason: 'Der Zug nach dem Leerlaufen ist der, der den Motor kostet.',
    remedy: 'Einen Füllstandsschalter mit Leuchte einbauen, mit zwei Zügen oder mehr in Reserve.',
  },
  'fail-safe-wired': {
    question:
      'Fallen Ladedruck und Zündung von selbst zurück, wenn Durchfluss oder Druck fehlt, in wenigen Zehntelsekunden?',
    reason: 'Mit dem Fluid ist der Spielraum bis zum Klopfen sofort weg; kein Fahrer ist schnell genug.',
    remedy:
      'Durchfluss oder Druck an Motorsteuerung oder Ladedruckregelung legen, mit dem Wachband als Grenzen.',
  },
  'fail-safe-proven': {
    question: 'Wurde der Rückfall gesehen, mit gezogener Pumpensicherung bei niedrigem Ladedruck?',
    reason: 'Ein Schutz, der nie erprobt wurde, ist eine Hoffnung.',
    remedy:
      'Bei niedrigem Ladedruck, auf Prüfstand oder abgesperrter Strecke, die Sicherung ziehen und zusehen, wie Ladedruck und Zündung zurückfallen.',
  },
  materials: {
    question: 'Sind Tank, Pumpe, Dichtungen, Schläuche und Düse für Alkohol gemacht?',
    reason:
      'Alkohol quillt manche Gummis, sprengt manche Kunststoffe und greift blankes Aluminium und Zink an.',
    remedy:
      'Für jedes Teil den Hersteller fragen; Polyethylen, PTFE, Edelstahl und vernickeltes Messing halten.',
  },
  storage: {
    question:
      'Wird das Fluid geschlossen und beschriftet aufbewahrt, nach außen belüftet, fern von Flammen und Funken, in erlaubter Menge?',
    reason: 'Halb Alkohol zündet bei Zimmertemperatur, und eine Methanolflamme ist bei Tag nicht zu sehen.',
    remedy: 'Wie Benzin lagern. Das Fluidblatt zeigt den Flammpunkt: nach dem vorsichtigen richten.',
  },
  'out-of-the-cabin': {
    question: 'Sind Tank und Leitungen außerhalb des Innenraums, oder abgedichtet und nach außen belüftet?',
    reason: 'Alkoholdampf, vor allem von Methanol, vergiftet Menschen im geschlossenen Wagen.',
    remedy: 'Den Tank aus dem Innenraum nehmen oder mit Entlüftung nach außen einhausen.',
  },
  'gloves-and-goggles': {
    question: 'Tragen alle, die das System füllen oder öffnen, Handschuhe und Schutzbrille, im Freien?',
    reason:
      'Methanol geht durch die Haut; kleine Mengen machen blind oder töten, und man merkt es erst spät.',
    remedy:
      'Nitril- oder Butylhandschuhe, Schutzbrille, frische Luft, Wasser zur Hand. Verschluckt: sofort zum Arzt.',
  },
  'clean-water': {
    question: 'Ist das Wasser demineralisiert oder destilliert?',
    reason: 'Kalk aus Leitungswasser bleibt in Düse und Ventilen.',
    remedy: 'Nur demineralisiertes Wasser nehmen.',
  },
  'boost-leak-test': {
    question: 'Ist die Ansaugung unter Ladedruck auf Lecks geprüft, auch am Düsenstutzen?',
    reason: 'Ein Leck verschiebt Ladedruck und Gemisch, und Nebel tritt aus, wo er nicht soll.',
    remedy: 'Die Ansaugung vor dem ersten Zug mit Luft auf Höchstdruck bringen und horchen.',
  },
  'sensors-plausible': {
    question: 'Zeigen Breitbandsonde und Klopfsensor Glaubhaftes?',
    reason: 'Sie sagen, wann Schluss ist: ein blinder Sensor stoppt nichts.',
    remedy: 'Die Sonde an freier Luft prüfen und das Rauschen des Klopfsensors über die Drehzahl.',
  },
};
