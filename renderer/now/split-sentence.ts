/**
 * A sentence such as `Go back to the baseline: let it cool down.` as a title and what follows it; one without a
 * colon is all title. The full stop of a title falls away.
 */
export function splitSentence(sentence: string): { title: string; rest: string } {
  const at = sentence.indexOf(': ');
  if (at < 0) return { title: sentence.replace(/\.$/, ''), rest: '' };
  const rest = sentence.slice(at + 2);
  return { title: sentence.slice(0, at), rest: rest.charAt(0).toLocaleUpperCase() + rest.slice(1) };
}
