import type { Expectation } from '../../result/index.ts';

const types: Readonly<Record<string, string>> = {
  number: 'a number is needed',
  int: 'a whole number is needed',
  string: 'text in quotes is needed',
  boolean: 'true or false is needed',
  array: 'a list in brackets is needed',
  object: 'named fields in braces are needed',
  record: 'named fields in braces are needed',
  null: 'null is needed',
};

const bounds = { 'at-most': 'at most', below: 'fewer than', 'at-least': 'at least', above: 'more than' };
const numbers = { 'at-most': 'at most', below: 'below', 'at-least': 'at least', above: 'above' };

function counted(of: 'text' | 'list', count: number): string {
  return `${of === 'text' ? 'character' : 'item'}${count === 1 ? '' : 's'}`;
}

/** What a field must be, after “can't be used:”. Numbers stand as they stand in the file. */
export function expected(e: Expectation): string {
  switch (e.kind) {
    case 'type':
      return types[e.type] ?? 'something else is needed here';
    case 'at-most':
    case 'below':
      if (e.of === 'number') return `it must be ${numbers[e.kind]} ${e.limit}`;
      return `${bounds[e.kind]} ${e.limit} ${counted(e.of, e.limit)} may stand there`;
    case 'at-least':
    case 'above':
      if (e.of === 'number') return `it must be ${numbers[e.kind]} ${e.limit}`;
      return `${bounds[e.kind]} ${e.limit} ${counted(e.of, e.limit)} must stand there`;
    case 'multiple':
      return `a multiple of ${e.divisor} is needed`;
    case 'one-of':
      return e.values.length === 1
        ? `it must be “${e.values[0]}”`
        : `it must be one of ${e.values.map((v) => `“${v}”`).join(', ')}`;
    case 'unknown-fields':
      return `it holds what is not known here: ${e.names.map((n) => `“${n}”`).join(', ')}`;
    case 'moment':
      return 'a moment like 2027-03-14T10:00:00Z is needed';
    case 'unit':
      return 'that is not a unit of this program';
    case 'own-id':
      return 'another entry has the same id';
    case 'promised':
      return `it lacks what a file of version ${e.version} holds`;
    case 'form':
      return `${e.form} is needed`;
    case 'other-form':
      return 'it does not have the form that is needed here';
  }
}
