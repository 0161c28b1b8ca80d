import { sampleFlag } from '../channel.ts';
import type { Cell } from './cell.ts';

const { text, southOrWest } = sampleFlag;
const cellOf = (kind: Cell['kind'], flag: number): Cell => ({ value: Number.NaN, flag, kind, unit: '' });
const north = cellOf('northSouth', text);
const south = cellOf('northSouth', text | southOrWest);
const east = cellOf('eastWest', text);
const west = cellOf('eastWest', text | southOrWest);

/**
 * A cell that is one letter of a half of the earth: `N`, `S`, `E`, `W`, or the O of Ost and of oeste. It stays a text; a
 * flag tells south and west. Null where the text is none.
 *
 * @param isRomance  the letter O is west
 * Source: a letter in a field of its own behind each position is the form of NMEA 0183, sentences GGA and RMC (from memory).
 */
export function halfCell(cell: string, isRomance: boolean): Cell | null {
  switch (cell.trim().toUpperCase()) {
    case 'N':
      return north;
    case 'S':
      return south;
    case 'E':
      return east;
    case 'W':
      return west;
    case 'O':
      return isRomance ? west : east;
    default:
      return null;
  }
}
