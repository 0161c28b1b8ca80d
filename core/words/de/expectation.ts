import type { Expectation } from '../../result/index.ts';

const types: Readonly<Record<string, string>> = {
  number: 'hier muss eine Zahl stehen',
  int: 'hier muss eine ganze Zahl stehen',
  string: 'hier muss Text in Anführungszeichen stehen',
  boolean: 'hier muss true oder false stehen',
  array: 'hier muss eine Liste in eckigen Klammern stehen',
  object: 'hier müssen benannte Felder in geschweiften Klammern stehen',
  record: 'hier müssen benannte Felder in geschweiften Klammern stehen',
  null: 'hier muss null stehen',
};

const bounds = { 'at-most': 'höchstens', below: 'weniger als', 'at-least': 'mindestens', above: 'mehr als' };
const numbers = {
  'at-most': 'höchstens',
  below: 'kleiner als',
  'at-least': 'mindestens',
  above: 'größer als',
};

function counted(of: 'text' | 'list', count: number): string {
  if (of === 'text') return 'Zeichen';
  return count === 1 ? 'Eintrag' : 'Einträge';
}

/** What a field must be, after „ist nicht brauchbar:“. Numbers stand as they stand in the file. */
export function expected(e: Expectation): string {
  switch (e.kind) {
    case 'type':
      return types[e.type] ?? 'hier muss etwas anderes stehen';
    case 'at-most':
    case 'below':
      if (e.of === 'number') return `der Wert muss ${numbers[e.kind]} ${e.limit} sein`;
      return `hier dürfen ${bounds[e.kind]} ${e.limit} ${counted(e.of, e.limit)} stehen`;
    case 'at-least':
    case 'above':
      if (e.of === 'number') return `der Wert muss ${numbers[e.kind]} ${e.limit} sein`;
      return `hier müssen ${bounds[e.kind]} ${e.limit} ${counted(e.of, e.limit)} stehen`;
    case 'multiple':
      return `hier muss ein Vielfaches von ${e.divisor} stehen`;
    case 'one-of':
      return e.values.length === 1
        ? `hier muss „${e.values[0]}“ stehen`
        : `hier muss eines davon stehen: ${e.values.map((v) => `„${v}“`).join(', ')}`;
    case 'unknown-fields':
      return `darin steht Unbekanntes: ${e.names.map((n) => `„${n}“`).join(', ')}`;
    case 'moment':
      return 'hier muss ein Zeitpunkt wie 2027-03-14T10:00:00Z stehen';
    case 'unit':
      return 'diese Einheit kennt das Programm nicht';
    case 'own-id':
      return 'ein anderer Eintrag hat dieselbe Kennung';
    case 'promised':
      return `es fehlt, was eine Datei der Version ${e.version} enthält`;
    case 'form':
      return `gebraucht wird ${e.form}`;
    case 'other-form':
      return 'die Form passt hier nicht';
  }
}
