import { useState } from 'react';
import type { Explanation } from '../../core/units/index.ts';
import { Button } from '../components/Button.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './WhereFrom.module.css';
import { WhereFromDialog } from './WhereFromDialog.tsx';

/** A number that can be asked where it comes from. */
export function WhereFrom({
  value,
  what,
  explanation,
}: {
  value: string;
  what: string;
  explanation: Explanation | undefined;
}) {
  const { screens } = useWords();
  const [isOpen, setOpen] = useState(false);
  if (!explanation) return <strong>{value}</strong>;
  return (
    <span className={styles.number}>
      <Button
        look="plain"
        onPress={() => setOpen(true)}
        aria-label={`${value}. ${screens.whereFrom.askOf(what)}`}
      >
        {value}
      </Button>
      {isOpen && <WhereFromDialog explanation={explanation} onClose={() => setOpen(false)} />}
    </span>
  );
}
