import type { ReactNode } from 'react';
import { Tooltip as AriaTooltip, TooltipTrigger } from 'react-aria-components';
import { cx } from '../design/cx.ts';
import styles from './Tooltip.module.css';

/** A short word beside a control that has none of its own; the child must take focus. */
export function Tooltip({ text, children }: { text: string; children: ReactNode }) {
  return (
    <TooltipTrigger delay={400}>
      {children}
      <AriaTooltip offset={6} className={cx(styles.tooltip)}>
        {text}
      </AriaTooltip>
    </TooltipTrigger>
  );
}
