import { Button as AriaButton, type ButtonProps as AriaButtonProps } from 'react-aria-components';
import { type ButtonLook, buttonClass } from './Button.tsx';

export type TriggerButtonProps = Omit<AriaButtonProps, 'className' | 'style'> & ButtonLook;

/** The button that a menu, a tooltip or a file dialog of the component library hangs on. */
export function TriggerButton({ look, isWide, ...props }: TriggerButtonProps) {
  return <AriaButton {...props} className={buttonClass({ look, isWide })} />;
}
