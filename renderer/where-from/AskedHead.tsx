import type { Explanation } from '../../core/units/index.ts';
import styles from './AskedHead.module.css';
import { WhereFrom } from './WhereFrom.tsx';

export type AskedHeadProps = {
  readonly title: string;
  readonly explanation: Explanation | null | undefined;
};

/** The head of a column whose numbers can be asked where they come from, at the row that is looked at. */
export function AskedHead({ title, explanation }: AskedHeadProps) {
  return (
    <span className={styles.head}>
      {explanation ? <WhereFrom value={title} what={title} explanation={explanation} /> : title}
    </span>
  );
}
