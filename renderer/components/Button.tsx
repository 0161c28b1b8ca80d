import type { ReactNode } from 'react';
import { cx } from '../design/cx.ts';
import styles from './Button.module.css';

export type ButtonLook = {
  /** `main` is the one thing to do; `plain` stands in text. */
  readonly look?: 'main' | 'second' | 'plain' | 'icon' | undefined;
  readonly isWide?: boolean | undefined;
};

export type ButtonProps = ButtonLook & {
  readonly children: ReactNode;
  readonly onPress?: () => unknown;
  readonly isDisabled?: boolean;
  readonly autoFocus?: boolean;
  readonly 'aria-label'?: string;
  readonly 'aria-busy'?: boolean;
  readonly 'aria-haspopup'?: 'dialog';
};

export const buttonClass = ({ look = 'second', isWide = false }: ButtonLook): string =>
  cx(styles.button, styles[look], isWide && styles.wide);

/** A plain button: tables of pulls and plans hold dozens of them. */
export function Button({ look, isWide, onPress, isDisabled, ...props }: ButtonProps) {
  return (
    <button
      {...props}
      type="button"
      disabled={isDisabled ?? false}
      onClick={(event) => {
        // Not every browser gives a pressed button the focus, and a dialog gives it back to who had it.
        event.currentTarget.focus();
        void onPress?.();
      }}
      className={buttonClass({ look, isWide })}
    />
  );
}
