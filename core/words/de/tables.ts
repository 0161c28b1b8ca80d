import type { TableAxis, TableKind } from '../../tables/index.ts';
import { unitOf } from '../../units/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import type { Show } from '../show.ts';

const axes: Record<TableAxis, string> = { across: 'oben', down: 'links' };

const kinds: Record<TableKind, string> = { spark: 'Zündung', boost: 'Ladedruck', lambda: 'Ein Gemischziel' };
/** Zellen behalten ihre Stellen; eine Einheit folgt, wo sie einen Namen hat. */
const cell = (value: number, unit: string, show: Show) => {
  const { symbol } = unitOf(unit);
  const digits = `${value}`.split('.')[1]?.length ?? 0;
  return symbol === '°' ? `${show.number(value, digits)}°` : `${show.number(value, digits)}\u00a0${symbol}`;
};

export const tablesProblems: ProblemWordsOf<'tables'> = {
  'tables/empty': () => ({
    message: 'Da ist nichts zu lesen.',
    remedy: 'Im Programm des Steuergeräts die ganze Tabelle mit beiden Achsen kopieren und hier einfügen.',
  }),
  'tables/no-grid': (f) => ({
    message: `In ${f.rows} Zeilen steht keine Tabelle: nötig sind eine Achse oben und eine links.`,
    remedy: 'Die Achsen mit den Zahlen zusammen kopieren.',
  }),
  'tables/row-length': (f) => ({
    message: `Diese Zeile hat ${f.cells} Zellen, die Achse darüber ${f.expected}.`,
    remedy: 'Die Tabelle als Ganzes kopieren, oder die Zeile richten.',
  }),
  'tables/axis-not-rising': (f, show) => ({
    message: `Auf der Achse ${axes[f.axis]} folgt ${show.number(f.value, 2)} auf ${show.number(f.previous, 2)}: eine Achse steigt oder fällt durchgehend.`,
    remedy: 'Prüfen, ob die Achse kopiert wurde und nicht eine Zeile der Tabelle.',
  }),
  'tables/cell-not-number': (f) => ({
    message: f.text === '' ? 'Diese Zelle ist leer.' : `„${f.text}“ ist keine Zahl.`,
    remedy: 'Die Zelle im Programm des Steuergeräts füllen und neu kopieren.',
  }),
  'tables/shape-differs': (f) => ({
    message: `${f.rows} Zeilen mal ${f.columns} Spalten lassen sich nicht über ${f.otherRows} mal ${f.otherColumns} legen.`,
    remedy: 'Zwei Fassungen einer Tabelle vergleichen.',
  }),
  'tables/axes-differ': (f, show) => ({
    message: `Auf der Achse ${axes[f.axis]} steht ${show.number(f.value, 2)} gegen ${show.number(f.other, 2)}.`,
    remedy: 'Zwei Fassungen einer Tabelle mit denselben Achsen vergleichen.',
  }),
  'tables/step-not-number': () => ({
    message: 'Der Schritt fehlt, oder er ist null.',
    remedy: 'Den Schritt in der Einheit der Tabelle eingeben.',
  }),
  'tables/no-limit': (f) => ({
    message:
      f.kind === 'spark'
        ? 'Für die Zündung dieser Tabelle gibt es noch keine Grenze.'
        : f.kind === 'boost'
          ? 'Für den Ladedruck gibt es noch keine Grenze.'
          : 'Ein magerstes Gemisch ist noch nicht eingetragen.',
    remedy:
      'Eintragen, was eine dieser Zellen höchstens bekommen darf; den Motor kennt der Tuner, nicht das Programm.',
  }),
  'tables/past-limit': (f, show) => ({
    message: `${cell(f.value, f.unit, show)} liegt über der eigenen Grenze von ${cell(f.limit, f.unit, show)}.`,
    remedy: 'Weniger eingeben, oder zuerst eine andere Grenze setzen.',
  }),
  'tables/cell-not-plausible': (f, show) => ({
    message: `${kinds[f.kind]} von ${cell(f.value, f.unit, show)} kann nicht sein: ein Motor läuft zwischen ${cell(f.lowest, f.unit, show)} und ${cell(f.highest, f.unit, show)}.`,
    remedy: 'Dezimalzeichen, Art und Einheit der Tabelle prüfen.',
  }),
  'tables/cell-dangerous': (f, show) => ({
    message: `${kinds[f.kind]} von ${cell(f.value, f.unit, show)} bei ${show.quantity(f.boost, 'boost')} Ladedruck zerstört einen Motor: über ${cell(f.highest, f.unit, show)} wird nichts gelesen.`,
    remedy: 'Die Zelle im Programm des Steuergeräts prüfen, hier Art und Lastachse.',
  }),
  'tables/no-engine-speed': (f, show) => ({
    message: `Die als Drehzahl gewählte Achse endet bei ${show.number(f.highest, f.highest < 100 ? 1 : 0)}\u00a0${show.symbol('rpm', 'engineSpeed')}.`,
    remedy: 'Die andere Achse wählen, oder sie ohne Tausenderzeichen neu kopieren.',
  }),
  'tables/load-not-plausible': (f, show) => ({
    message: `Die Lastachse endet bei ${cell(Number(f.highest.toPrecision(6)), f.unit, show)}: dorthin kommt kein Motor.`,
    remedy: 'Wählen, worin die Lastachse zählt.',
  }),
};

export const tablesNotes: NoteWordsOf<'tables'> = {
  'tables/stepped': (f, show) =>
    `${f.cells} ${f.cells === 1 ? 'Zelle' : 'Zellen'} verstellt, die größte um ${show.number(f.largest, 2)}.`,
  'tables/held-by-limit': (f, show) =>
    `${f.cells} ${f.cells === 1 ? 'Zelle' : 'Zellen'} an der eigenen Grenze von ${show.number(f.limit, 2)} gehalten.`,
  'tables/held-by-neighbours': (f, show) =>
    `${f.cells} ${f.cells === 1 ? 'Zelle' : 'Zellen'} von den Nachbarzellen zurückgehalten: ${f.limit === null ? '' : `höchstens ${show.number(f.limit, 2)} auseinander, und `}höchstens einen Schritt von ${show.number(f.step, 2)} weiter auseinander als zuletzt festgehalten.`,
  'tables/fluid-was-short': (f) =>
    `${f.cells} ${f.cells === 1 ? 'Zelle sollte' : 'Zellen sollten'} nach der Kurve Fluid bekommen, doch der gemessene Fluss war dort zu klein: unverändert.`,
  'tables/nothing-covered': () =>
    'Das Fluid erreicht keine gefahrene Zelle: nichts wird verstellt. Eine Zelle ohne Fluid darf dessen Zündung nicht bekommen.',
  'tables/nothing-changed': () =>
    'Keine Zelle geändert: Grenzen und Nachbarzellen lassen diesem Schritt keinen Platz.',
  'tables/step-too-fine': (f, show) =>
    `Keine Zelle geändert: der Schritt ist feiner als die Stellen der Tabelle, die um ${show.number(f.digit, f.decimals)} springen. Einen Schritt von ${show.number(f.least, f.decimals)} oder mehr eingeben.`,
  'tables/covered-not-driven': (f) =>
    `${f.cells} ${f.cells === 1 ? 'Zelle bekommt' : 'Zellen bekommen'} Fluid, aber kein Zug war dort: unverändert.`,
  'tables/check-before-writing': () =>
    'Die Differenz ansehen, bevor sie ins Steuergerät geht: eine falsche Zelle unter Ladedruck zerstört einen Motor in Sekunden. Die alte Tabelle aufheben.',
};
