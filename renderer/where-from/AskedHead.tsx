import type { Explanation } from '../../core/units/index.ts';
import styles from './AskedHead.module.css';
import type { Origin } from './origin.ts';
import { WhereFrom } from './WhereFrom.tsx';

export type AskedHeadProps = {
  readonly title: string;
  readonly explanation?: Explanation | null | undefined;
  readonly origin?: Origin | undefined;
};

/** The head of a column whose numbers can be asked where they come from, at the row that is looked at. */
export function AskedHead({ title, explanation, origin }: AskedHeadProps) {
  return (
    <span className={styles.head}>
      {explanation || origin ? (
        <WhereFrom value={title} what={title} explanation={explanation ?? undefined} origin={origin} />
      ) : (
        title
      )}
    </span>
  );
}
