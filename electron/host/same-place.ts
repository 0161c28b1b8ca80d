import { stat } from 'node:fs/promises';

/** Whether two paths name one folder: a link, a stroke at the end and another case of letters make other texts of it. */
export async function isSamePlace(a: string, b: string): Promise<boolean> {
  if (a === b) return true;
  const look = (path: string) => stat(path, { bigint: true }).catch(() => null);
  const [one, other] = await Promise.all([look(a), look(b)]);
  return one !== null && other !== null && one.dev === other.dev && one.ino === other.ino;
}
