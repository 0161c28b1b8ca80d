/** Whether a name holds what was typed, whichever case and accents either is written with. */
export function isNamed(name: string, typed: string): boolean {
  return plain(name).includes(plain(typed.trim()));
}

const plain = (text: string) =>
  text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replaceAll('ß', 'ss');
