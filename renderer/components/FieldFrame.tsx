import type { ReactNode } from 'react';
import styles from './Field.module.css';

export type FieldFrameProps = {
  /** Of the control inside; the texts around it get theirs from it. */
  readonly id: string;
  readonly label: ReactNode;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly children: ReactNode;
};

/** Label above, hint or fault below, tied to the control by their ids. */
export function FieldFrame({ id, label, hint, error, children }: FieldFrameProps) {
  return (
    <div className={styles.field}>
      <label htmlFor={id} className={styles.label}>
        {label}
      </label>
      {children}
      {hint && !error && (
        <span id={hintId(id)} className={styles.hint}>
          {hint}
        </span>
      )}
      {error && (
        <span id={errorId(id)} className={styles.error}>
          {error}
        </span>
      )}
    </div>
  );
}

const hintId = (id: string) => `${id}-hint`;
const errorId = (id: string) => `${id}-error`;

/** What a control inside the frame carries, so that its fault and its hint are read out with it. */
export function controlProps(
  { id, hint, error }: Pick<FieldFrameProps, 'id' | 'hint' | 'error'>,
  also?: string,
) {
  const described = [also, error ? errorId(id) : hint ? hintId(id) : undefined].filter(Boolean).join(' ');
  return {
    id,
    'aria-invalid': error ? true : undefined,
    'aria-describedby': described === '' ? undefined : described,
  };
}
