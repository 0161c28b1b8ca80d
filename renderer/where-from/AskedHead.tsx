import type { Explanation } from '../../core/units/index.ts';
import { WhereFrom } from './WhereFrom.tsx';

/** The head of a column whose numbers can be asked where they come from, at the row that is looked at. */
export function AskedHead({
  title,
  explanation,
}: {
  title: string;
  explanation: Explanation | null | undefined;
}) {
  return explanation ? <WhereFrom value={title} what={title} explanation={explanation} /> : title;
}
