import { useState } from 'react';
import type { Explanation } from '../../core/units/index.ts';
import { Button } from '../components/Button.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { type Origin, originOf } from './origin.ts';
import styles from './WhereFrom.module.css';
import { WhereFromDialog } from './WhereFromDialog.tsx';

export type WhereFromProps = {
  readonly value: string;
  /** What the number is, for whoever hears the button instead of seeing it. */
  readonly what: string;
  readonly explanation?: Explanation | undefined;
  readonly origin?: Origin | undefined;
};

/** A number that can be asked where it comes from; without an answer it is a plain number. */
export function WhereFrom({ value, what, explanation, origin }: WhereFromProps) {
  const { screens, show } = useWords();
  const [isOpen, setOpen] = useState(false);
  const shown = origin ?? (explanation && originOf(explanation, show));
  if (!shown) return <strong>{value}</strong>;
  return (
    <span className={styles.number}>
      <Button
        look="plain"
        onPress={() => setOpen(true)}
        aria-label={`${value}. ${screens.whereFrom.askOf(what)}`}
      >
        {value}
      </Button>
      {isOpen && <WhereFromDialog origin={shown} onClose={() => setOpen(false)} />}
    </span>
  );
}
