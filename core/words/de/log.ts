import { kindMeasuredIn, type OtherFile } from '../../log/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import { firstNames } from '../first-names.ts';
import { measuredIn } from '../measured-in.ts';
import type { Show } from '../show.ts';
import { quantityNames } from './quantities.ts';
import { derived } from './screens/derived.ts';

const otherFiles: Record<OtherFile, string> = {
  image: 'ein Bild',
  archive: 'ein Archiv',
  workbook: 'eine Datei der Tabellenkalkulation',
  document: 'ein Dokument',
  program: 'ein Programm',
  media: 'Ton oder Video',
  database: 'eine Datenbank',
  'web-page': 'eine Webseite',
  json: 'JSON',
  xml: 'XML',
  binary: 'binär',
};

const packedRemedies: Partial<Record<OtherFile, string>> = {
  archive: 'Auspacken und das Log darin einlesen.',
  workbook:
    'Das Blatt mit dem Log in der Tabellenkalkulation als Texttabelle (CSV) speichern und diese einlesen.',
};

const encodingNames: Readonly<Record<string, string>> = {
  'windows-1250': 'Windows 1250 (Mitteleuropa)',
  'iso-8859-2': 'ISO 8859-2 (Mitteleuropa)',
  macintosh: 'Mac Roman',
  cp850: 'DOS-Codepage 850',
  cp437: 'DOS-Codepage 437',
  cp852: 'DOS-Codepage 852 (Mitteleuropa)',
  shift_jis: 'Shift_JIS (japanisch)',
};

const rewrittenFrom = {
  'web-page': 'Die Datei ist eine Webseite; gelesen wurde die Tabelle darin.',
  json: 'Die Datei ist JSON; gelesen wurden die Datensätze darin als Zeilen.',
  'value-per-row':
    'Jede Zeile der Datei enthält einen Wert eines Kanals; Werte derselben Zeit wurden als eine Zeile gelesen.',
  'on-its-side': 'Die Tabelle liegt auf der Seite; gelesen wurde sie mit vertauschten Zeilen und Spalten.',
} as const;

const unitName = (unit: string, show: Show) =>
  unit === '' ? 'eine reine Zahl' : unit === '1' ? '0 … 1' : show.symbol(unit, 'number');

const missingField = {
  gearRatios: 'die Liste der Gangübersetzungen',
  finalDrive: 'die Achsübersetzung',
  radius: 'der Abrollradius oder die Reifengröße',
  gear: 'der Gang der Züge',
} as const;

export const logProblems: ProblemWordsOf<'log'> = {
  'log/formula-too-long': (f) => ({
    message: `Die Formel ist ${f.length} Zeichen lang; höchstens ${f.most} gehen.`,
    remedy: 'Teilen: Ein abgeleiteter Kanal darf einen früheren benutzen.',
  }),
  'log/formula-empty': () => ({
    message: 'Es steht keine Formel da.',
    remedy: 'Wie im Buch schreiben: (boost + 100 kPa) / barometricPressure.',
  }),
  'log/formula-too-large': (f) => ({
    message: `Die Formel hat mehr als ${f.parts} Teile, oder mehr als ${f.levels} davon stecken ineinander.`,
    remedy: 'Teilen: Ein abgeleiteter Kanal darf einen früheren benutzen.',
  }),
  'log/formula-unreadable': (f) => ({
    message:
      f.rest === ''
        ? 'Die Formel endet, wo noch etwas folgen muss.'
        : `Die Formel ist ab Zeichen ${f.at} nicht lesbar: „${f.rest}“.`,
    remedy:
      'Wie im Buch schreiben, Dezimalen mit Punkt: (boost + 100 kPa) * 1.5. Für Namen mit Leerzeichen oder Sonderzeichen steht der kurze Name in der Liste der Namen.',
  }),
  'log/formula-refused': (f) => ({
    message: `„${f.part}“ darf in keiner Formel stehen.`,
    remedy:
      'Erlaubt sind + - * / ^, Vergleiche, Bedingung ? ja : nein, und abs, sqrt, exp, log, log10, sin, cos, tan, floor, ceil, round, min, max, rate, smooth.',
  }),
  'log/formula-symbol-unknown': (f, show) => ({
    message: `In diesem Log heißt nichts „${f.symbol}“.`,
    remedy: `Einen Namen aus der Liste bei den Formeln nehmen, oder eine Einheit. Temperaturen stehen in ${show.symbol('K', 'temperature')}.`,
  }),
  'log/formula-units': (f) => ({
    message:
      f.left === ''
        ? `Die Einheiten passen nicht: ${f.detail}.`
        : `Die Einheiten passen bei „${f.detail}“ nicht: ${measuredIn(f.left, derived.kinds)} ≠ ${measuredIn(f.right, derived.kinds)}.`,
    remedy: 'Hinter jede Zahl mit Einheit die Einheit schreiben: boost + 100 kPa.',
  }),
  'log/formula-window': () => ({
    message: 'Das Fenster von „smooth“ ist eine feste Zeit über null.',
    remedy: 'So schreiben: smooth(boost, 0.3 s).',
  }),
  'log/formula-result-units': (f) => ({
    message: `Die Formel ergibt „${measuredIn(f.found, derived.kinds)}“, der Kanal soll aber „${measuredIn(f.claimed, derived.kinds)}“ sein.`,
    remedy:
      kindMeasuredIn(f.found) === null
        ? 'Mit einer Einheit auf eine wählbare Art bringen, etwa * (1 s).'
        : 'Die Art wählen, die die Formel ergibt, oder die Formel berichtigen.',
  }),
  'log/empty': () => ({
    message: 'Die Datei ist leer.',
    remedy: 'Die Fahrt neu aufzeichnen oder die Datei wählen, die der Logger geschrieben hat.',
  }),
  'log/not-a-table': (f) => ({
    message: `Die Datei ist ${otherFiles[f.found]}, kein Log.`,
    remedy:
      packedRemedies[f.found] ?? 'Die Fahrt im Logger als Texttabelle (CSV) ausgeben und diese einlesen.',
  }),
  'log/null-bytes': () => ({
    message: 'Die Datei enthält Null-Bytes: Sie ist beschädigt oder kein Text.',
    remedy: 'Noch einmal vom Logger kopieren oder neu als Texttabelle ausgeben.',
  }),
  'log/line-too-long': (f) => ({
    message: `Eine Zeile ist länger als ${Math.round(f.limit / 1024)} kB; so lang ist keine Zeile eines Logs.`,
    remedy: 'Die Fahrt neu ausgeben, eine Zeile je Messpunkt.',
  }),
  'log/only-text': (f) => ({
    message: `Keine Zeile mit Zahlen am Anfang der Datei (gelesene Zeilen: ${f.linesRead}).`,
    remedy: 'Eine Datei wählen, die je Messpunkt eine Zeile mit Zahlen hat.',
  }),
  'log/value-per-row': (f) => ({
    message: `Jede Zeile enthält einen Wert eines Kanals (${f.channels} sind es), und sie lassen sich nicht zusammenführen.`,
    remedy: 'Die Fahrt als Tabelle mit einer Spalte je Kanal und einer Zeile je Messwert ausgeben.',
  }),
  'log/on-its-side': (f) => ({
    message: `Die Tabelle liegt auf der Seite: Jede Zeile ist ein Kanal mit seinem Namen vorn (${f.channels}), die Messwerte stehen daneben (${f.samples}).`,
    remedy:
      'In einer Kopie der Datei Zeilen und Spalten tauschen: die Namen in einer Zeile oben, darunter eine Zeile je Messwert.',
  }),
  'log/too-many-columns': (f) => ({
    message: `Die Tabelle hat ${f.columns} Spalten; mehr als ${f.limit} gehen nicht.`,
    remedy: 'Weniger Kanäle ausgeben, oder Zeilen und Spalten tauschen, falls die Datei quer liegt.',
  }),
  'log/too-few-rows': (f) => ({
    message: `Zeilen mit Zahlen in der Tabelle: ${f.rows}; mindestens ${f.needed} sind nötig.`,
    remedy: 'Die Fahrt neu aufzeichnen und prüfen, ob der Logger noch lief.',
  }),
  'log/names-uneven': (f) => ({
    message: `${f.names} Namen stehen über ${f.columns} Zahlenspalten; welcher zu welcher gehört, ist nicht zu erkennen.`,
    remedy:
      'In einer Kopie der Datei Namen und Zahlen durch Strichpunkte oder Tabulatoren trennen oder jeden Namen ohne Leerzeichen schreiben.',
  }),
  'log/comma-twice': (f) => ({
    message: `Das Komma trennt die Spalten und ist zugleich Dezimalzeichen: ${f.names} Namen stehen über ${f.columns} Spalten.`,
    remedy: 'Das Log noch einmal mit Strichpunkten zwischen den Spalten oder mit Dezimalpunkten schreiben.',
  }),
  'log/no-time': (f) => ({
    message: `In keiner der Spalten steht die Zeit: ${firstNames(f.columns, (n) => `${n} weitere`)}.`,
    remedy:
      'Steht in einer davon die Zeit oder zählt sie die Zeilen, unter Spalten auf Zeit setzen; eine Zeilennummer mit der Zeit von Zeile zu Zeile als Einheit, etwa 1/20 s. Sonst in einer Kopie der Datei über den Spaltenkopf die Rate schreiben: Abtastrate: 20 Hz.',
  }),
  'log/curve-without-time': (f) => ({
    message: `Die Tabelle ist eine fertige Kurve über „${f.column}“: In keiner Spalte steht die Zeit, darum lässt sich kein Zug darin finden.`,
    remedy: 'Die Messwerte der Fahrt über der Zeit vom Prüfstand ausgeben und diese einlesen.',
  }),
  'log/time-stands-still': () => ({
    message: 'Die Zeit läuft nie weiter.',
    remedy:
      'Unter Spalten eine andere auf Zeit setzen, eine Zeilennummer mit der Zeit von Zeile zu Zeile als Einheit, etwa 1/20 s; oder in einer Kopie der Datei diese Spalte herausnehmen und über den Spaltenkopf die Rate schreiben: Abtastrate: 20 Hz.',
  }),
  'log/time-no-clock': (f, show) => ({
    message: `In der Zeitspalte steht ${show.reading(f.first)}; das zeigt keine Uhr.`,
    remedy:
      'Eine andere Zeitspalte wählen (Züge, Spalten) oder in einer Kopie der Datei diese herausnehmen und über den Spaltenkopf die Rate schreiben: Abtastrate: 20 Hz.',
  }),
  'log/mapping-unit': (f) => ({
    message: `„${f.unit}“ ist keine Einheit dieser Größe: ${quantityNames[f.quantity]}.`,
    remedy: 'Eine Einheit dieser Größe wählen, oder die Spalte ohne Größe lassen.',
  }),
  'log/too-big': (f) => ({
    message: `Mehr als ${f.rows} Zeilen mit ${f.columns} Spalten passen nicht in den Speicher.`,
    remedy: 'Das Log in kürzere Fahrten teilen, oder weniger Kanäle ausgeben.',
  }),
  'log/cancelled': () => ({
    message: 'Das Einlesen wurde abgebrochen.',
    remedy: 'Die Datei erneut einlesen.',
  }),
};

export const logNotes: NoteWordsOf<'log'> = {
  'log/column-by-formula': (f) => `Nach der Formel ${f.formula}.`,
  'log/column-by-name': (f) => `Im Spaltenkopf steht „${f.word}“.`,
  'log/column-by-name-unit': (f, show) =>
    `Im Spaltenkopf steht „${f.word}“${f.unit === '' ? '' : `, in ${unitName(f.unit, show)}`}.`,
  'log/column-by-values': (f, show) =>
    `Im Spaltenkopf steht „${f.word}“; Werte von ${show.reading(f.low)} bis ${show.reading(f.high)} sprechen für ${unitName(f.unit, show)}.`,
  'log/column-gauge-by-values': (f, show) =>
    `Heißt „${f.word}“; ob absolut oder über der Umgebung, sagen die Werte: ${show.quantity(f.low, 'pressure')} bis ${show.quantity(f.high, 'pressure')}.`,
  'log/column-steady-clock': (f, show) =>
    `Am Namen nicht erkannt, läuft aber in gleichen Schritten von ${show.number(f.step_s, 3)} weiter.`,
  'log/column-by-hand': () => 'Von Hand gesetzt.',
  'log/column-by-profile': () => 'Wie von Hand für ein früheres Log mit denselben Spalten gesetzt.',
  'log/column-stands-still': () => 'Ändert sich nie, während der Motor es tut; bleibt, wie sie ist.',
  'log/column-unknown': () => 'Nicht erkannt; bleibt, wie sie ist.',
  'log/encoding-by-words': (f) =>
    `Die Datei sagt nicht, wie ihre Umlaute und Akzente geschrieben sind; sie wurden als ${encodingNames[f.encoding] ?? f.encoding} gelesen, worin die meisten ihrer Wörter bekannt sind.`,
  'log/columns-unnamed': (f) =>
    `Der Spaltenkopf in Zeile ${f.line} nennt die letzten Spalten nicht: ${f.count} von ${f.columns}.`,
  'log/times-joined': (f) =>
    `Die Datei hat ${f.count} Zeiten, jede für die Spalten dahinter. Alle wurden auf „${f.column}“ gebracht, auf geraden Linien zwischen ihren Werten.`,
  'log/rewritten': (f) => rewrittenFrom[f.form],
  'log/opening-turned': (f) =>
    `„${f.column}“ fällt, während sich das Saugrohr füllt, und wurde darum umgedreht: der kleinste Wert gilt als ganz offen.`,
  'log/speed-unit-assumed': (f, show) =>
    `Nichts sagt, welche Einheit „${f.column}“ hat; angenommen ist ${show.symbol(f.unit, 'speed')}. Von Hand setzen, wenn das nicht stimmt: die Leistung geht mit dem Quadrat.`,
  'log/speed-unit-by-gears': (f, show) =>
    `Nichts sagt, welche Einheit „${f.column}“ hat; zu Drehzahl, Gängen und Reifen des Autos passt nur ${show.symbol(f.unit, 'speed')}, so wurde sie gelesen. Eine von Hand gesetzte Einheit geht vor.`,
  'log/speed-unit-by-engine': (f, show) =>
    `Nichts sagt, welche Einheit „${f.column}“ hat; in jeder anderen als ${show.symbol(f.unit, 'speed')} drehte der Motor für die Fahrgeschwindigkeit schneller, als der kürzeste Gang eines Autos es zulässt. Bitte prüfen: die Leistung geht mit dem Quadrat.`,
  'log/rows-far-apart': (f, show) =>
    `Nur alle ${show.quantity(f.step_s, 'time', 2)} eine Zeile: zu langsam für die Enden der Züge und für die Leistung. Zählt die Spalte Zeilen oder eine andere Einheit, von Hand setzen.`,
  'log/rows-skipped': (f) =>
    `Zeilen ohne brauchbare Zahlen, ausgelassen: ${f.count}, die erste ist Zeile ${f.firstLine}.`,
  'log/rows-wide': (f) =>
    `Zeilen mit mehr Zahlen, als die Tabelle Spalten hat (${f.columns}), ausgelassen: ${f.count}, die erste ist Zeile ${f.firstLine}.${f.isCommaParted ? ' Das kommt von Kommas in den Zahlen: das Log noch einmal mit Strichpunkten zwischen den Spalten oder mit Dezimalpunkten schreiben.' : ''}`,
  'log/zero-rows': (f) =>
    `Zeilen mit Nullbytes, wie nach einem Stromausfall, ausgelassen: ${f.count}, die erste ist Zeile ${f.firstLine}.`,
  'log/header-repeated': (f) =>
    `Der Spaltenkopf kommt in Zeile ${f.firstLine} wieder, insgesamt ${f.count}-mal.`,
  'log/other-table': (f) =>
    `Ab Zeile ${f.line} beginnt eine Tabelle mit anderen Spalten; nur die darüber wurde gelesen.`,
  'log/last-row-cut': (f) => `Die letzte Zeile, Zeile ${f.line}, ist abgeschnitten und wurde ausgelassen.`,
  'log/foot-left-out': (f) =>
    `Zeilen ohne Zeit am Ende, etwa mit kleinsten und größten Werten, wurden ausgelassen: ${f.count}.`,
  'log/newest-first': () => 'Die neueste Zeile steht zuerst; die Zeilen wurden umgedreht.',
  'log/padded-tail': (f) =>
    `Null-Bytes am Ende der Datei, wie nach einem Stromausfall, wurden ausgelassen: ${f.bytes}.`,
  'log/time-repaired': (f, show) =>
    `Zeitstempel, die fehlten oder falsch standen: ${f.count}, der erste bei ${show.number(f.first_s, 2)} s; zwischen ihre Nachbarn gesetzt.`,
  'log/stamps-spread': (f) => `Zeilen mit dem Zeitstempel der Zeile davor: ${f.count}; gleichmäßig verteilt.`,
  'log/clock-reset': (f, show) =>
    `Die Uhr beginnt neu, von ${show.number(f.at_s, 2)} s auf ${show.number(f.to_s, 2)} s, insgesamt ${f.count}-mal.`,
  'log/gap': (f, show) =>
    `Lücken in der Aufzeichnung: ${f.count}, die erste nach ${show.number(f.at_s, 2)} s; die längste dauert ${show.number(f.longest_s, 2)} s.`,
  'log/time-from-rate': (f, show) =>
    `Die Zeit wurde aus den Zeilen gezählt, ${show.number(f.rate_Hz, 1)} je Sekunde.`,
  'log/profile-used': (f) =>
    f.count === 1
      ? '1 Spalte wird gelesen, wie sie in einem früheren Log mit denselben Spalten korrigiert wurde.'
      : `${f.count} Spalten werden gelesen, wie sie in einem früheren Log mit denselben Spalten korrigiert wurden.`,
  'log/mapping-unused': (f) => `Die Zuordnung nennt eine Spalte „${f.column}“, die die Datei nicht hat.`,
  'log/pulls-by': (f) =>
    `Weder Pedal noch Drosselklappe helfen; die Züge wurden an diesem Kanal erkannt: ${quantityNames[f.quantity]}.`,
  'log/no-pulls': () => 'Kein Volllastzug gefunden.',
  'log/no-engine-speed': () =>
    'In diesem Log steht weder Motordrehzahl noch eine Fahrgeschwindigkeit, die sich ändert, daher lassen sich keine Züge finden. Die Motordrehzahl mit aufzeichnen oder ihre Spalte zuordnen.',
  'log/speed-alone': (f) =>
    `Von dem, was einen Zug zeigt, steht nur „${f.column}“ in diesem Log, und Geschwindigkeit allein unterscheidet Vollgas nicht von sanftem Beschleunigen in einem niedrigeren Gang. Motordrehzahl, Pedal, Drosselklappe oder Ladedruck mit aufzeichnen oder die Züge von Hand setzen.`,
  'log/engine-speed-computed': (f) =>
    f.gearFrom === 'log'
      ? `Die Motordrehzahl ist berechnet, nicht aufgezeichnet: aus „${f.column}“ über den aufgezeichneten Gang.`
      : `Die Motordrehzahl ist berechnet, nicht aufgezeichnet: aus „${f.column}“ und dem Gang, den das Fahrzeug für seine Züge nennt. Wurden die meisten Züge in einem anderen Gang gefahren, sind Motordrehzahl und Motorleistung falsch; die Radleistung bleibt.`,
  'log/engine-speed-open': (f) =>
    `Die Motordrehzahl ist nicht aufgezeichnet. Züge wurden an „${f.column}“ gefunden, aber es gibt keine Leistung über der Drehzahl: ${missingField[f.missing]} fehlt. Im Fahrzeug eintragen oder die Motordrehzahl mit aufzeichnen.`,
  'log/pull-gear-unsettled': () =>
    'Sein Gang lässt sich nicht bestimmen: Die Motordrehzahl ist nicht aufgezeichnet, und die Kraft passt neben den anderen Zügen zu keinem Gang oder zu mehreren.',
  'log/pull-aborted': (f, show) =>
    `Früh zu Ende${f.rpmTo_rad_s === null ? '' : `, bei ${show.quantity(f.rpmTo_rad_s, 'engineSpeed')}`}, bevor er eine brauchbare Spanne umfasste.`,
  'log/pull-gear-change': (f, show) =>
    `Endet oder beginnt mit einem Gangwechsel bei ${show.number(f.time_s, 2)} s.`,
  'log/pull-wheel-spin': (f, show) => {
    const ahead =
      f.excess === null ? '' : `: Die Drehzahl läuft der Fahrt um ${show.number(100 * f.excess, 0)} % voraus`;
    return `Räder drehen durch oder die Kupplung rutscht bei ${show.number(f.time_s, 2)} s${ahead}.`;
  },
  'log/pull-limiter': (f, show) => `Im Begrenzer bei ${show.quantity(f.engineSpeed_rad_s, 'engineSpeed')}.`,
  'log/pull-intervention': (f, show) =>
    `Bei ${show.number(f.time_s, 2)} s wurde Moment zurückgenommen, obwohl das Pedal unten blieb.`,
  'log/pull-knock': (f, show) =>
    `Zündung wegen Klopfens um ${show.quantity(f.retard_rad, 'angle')} zurückgenommen bei ${show.number(f.time_s, 2)} s.`,
  'log/pull-gap': (f, show) =>
    `Ab ${show.number(f.time_s, 2)} s fehlen Zeilen für ${show.number(f.missing_s, 2)} s; die Geschwindigkeit geht weiter, wie sie es unter Volllast täte.`,
  'log/pull-no-start': () => 'Die Aufzeichnung beginnt erst unter Volllast.',
  'log/pull-no-end': () => 'Die Aufzeichnung endet, bevor vom Gas gegangen wurde.',
  'log/pull-start-uncertain': (f, show) =>
    `Anfang unsicher auf ±${show.number(f.within_s, 2)} s: kein Pedal zeigt ihn. Nachsehen und zuschneiden.`,
  'log/pull-end-uncertain': (f, show) =>
    `Ende unsicher auf ±${show.number(f.within_s, 2)} s: kein Pedal zeigt es. Nachsehen und zuschneiden.`,
};
