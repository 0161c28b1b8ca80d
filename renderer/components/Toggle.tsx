import type { ReactNode } from 'react';

export type ToggleProps = {
  readonly 'aria-label'?: string;
  readonly isOn: boolean;
  readonly onToggle: () => void;
  readonly className?: string | undefined;
  readonly children: ReactNode;
};

/** A button that stays in or out. */
export function Toggle({ isOn, onToggle, ...props }: ToggleProps) {
  return <button {...props} type="button" aria-pressed={isOn} onClick={onToggle} />;
}
