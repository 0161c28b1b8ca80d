import type { TableAxis } from '../../tables/index.ts';
import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';

const axes: Record<TableAxis, string> = { across: 'oben', down: 'links' };

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
};

export const tablesNotes: NoteWordsOf<'tables'> = {
  'tables/stepped': (f, show) =>
    `${f.cells} ${f.cells === 1 ? 'Zelle' : 'Zellen'} verstellt, die größte um ${show.number(f.largest, 2)}.`,
  'tables/held-by-limit': (f, show) =>
    `${f.cells} ${f.cells === 1 ? 'Zelle' : 'Zellen'} an der eigenen Grenze von ${show.number(f.limit, 2)} gehalten.`,
  'tables/held-by-neighbours': (f, show) =>
    `${f.cells} ${f.cells === 1 ? 'Zelle' : 'Zellen'} zurückgehalten: nicht mehr als ${show.number(f.limit, 2)} neben einer Nachbarin.`,
  'tables/nothing-covered': () =>
    'Die Flüssigkeit erreicht keine gefahrene Zelle: nichts wird verstellt. Eine Zelle ohne Flüssigkeit darf deren Zündung nicht bekommen.',
  'tables/nothing-changed': () =>
    'Keine Zelle geändert: Grenzen und Nachbarinnen lassen diesem Schritt keinen Platz.',
  'tables/covered-not-driven': (f) =>
    `${f.cells} ${f.cells === 1 ? 'Zelle bekommt' : 'Zellen bekommen'} Flüssigkeit, aber kein Zug war dort: unverändert.`,
  'tables/check-before-writing': () =>
    'Die Differenz ansehen, bevor sie ins Steuergerät geht: eine falsche Zelle unter Ladedruck zerstört einen Motor in Sekunden. Die alte Tabelle aufheben.',
};
