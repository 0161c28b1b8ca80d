/**
 * Numbers of which few differ, as those of a logged channel: the different ones, and the place of each sample among
 * them. A quarter of the bytes, and the same numbers to the last bit.
 */
export type PackedNumbers = { readonly table: Float64Array; readonly places: Uint16Array };

/** Shorter ones are not worth it. */
const shortest = 4096;
/** So many different numbers fit the places. */
const most = 1 << 16;
/** Slots of the search, at most a quarter in use. */
const slotCount = 4 * most;
const slots = new Int32Array(slotCount);

/** Packs numbers; null where they are few, or where too many of them differ. */
export function packNumbers(values: Float64Array): PackedNumbers | null {
  const n = values.length;
  if (n < shortest) return null;
  // Told apart by their bits: no NaN equals itself, and zero has two signs.
  const bits = new Int32Array(values.buffer, values.byteOffset, 2 * n);
  const limit = Math.min(most, n >> 1);
  const table = new Float64Array(limit);
  const tableBits = new Int32Array(table.buffer);
  const places = new Uint16Array(n);
  slots.fill(0);
  let count = 0;
  for (let i = 0; i < n; i++) {
    const low = bits[2 * i] as number;
    const high = bits[2 * i + 1] as number;
    let mixed = Math.imul(low ^ Math.imul(high, 0x9e3779b1), 0x85ebca6b);
    mixed ^= mixed >>> 15;
    let slot = mixed & (slotCount - 1);
    let place = (slots[slot] as number) - 1;
    while (place >= 0 && (tableBits[2 * place] !== low || tableBits[2 * place + 1] !== high)) {
      slot = (slot + 1) & (slotCount - 1);
      place = (slots[slot] as number) - 1;
    }
    if (place < 0) {
      if (count === limit) return null;
      place = count++;
      tableBits[2 * place] = low;
      tableBits[2 * place + 1] = high;
      slots[slot] = count;
    }
    places[i] = place;
  }
  return { table: table.slice(0, count), places };
}

/** The numbers back, in memory that workers share. */
export function unpackNumbers({ table, places }: PackedNumbers): Float64Array {
  const values = new Float64Array(new SharedArrayBuffer(8 * places.length));
  for (let i = 0; i < places.length; i++) values[i] = table[places[i] as number] as number;
  return values;
}
