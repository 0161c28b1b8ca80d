/** A line with its time of day, under what was noted before. */
export function withQuickNote(notes: string, line: string, now: Date): string {
  const time = [now.getHours(), now.getMinutes()].map((n) => String(n).padStart(2, '0')).join(':');
  return `${notes.trimEnd()}${notes.trim() === '' ? '' : '\n'}${time} ${line.trim()}`;
}
