import { Button as AriaButton, type ButtonProps as AriaButtonProps } from 'react-aria-components';
import { cx } from '../design/cx.ts';
import styles from './Button.module.css';

export type ButtonProps = Omit<AriaButtonProps, 'className' | 'style'> & {
  /** `main` is the one thing to do; `plain` stands in text. */
  readonly look?: 'main' | 'second' | 'plain' | 'icon';
  readonly isWide?: boolean;
};

export function Button({ look = 'second', isWide = false, ...props }: ButtonProps) {
  return <AriaButton {...props} className={cx(styles.button, styles[look], isWide && styles.wide)} />;
}
