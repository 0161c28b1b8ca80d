import { createContext, useContext } from 'react';
import { useWords } from '../hooks/use-words.tsx';
import { Button } from './Button.tsx';

/** Closes the dialog around, or asks first. */
export const LeaveContext = createContext<(() => void) | null>(null);

/** Leaves the dialog that it stands in, as its other ways out do. */
export function CancelButton() {
  const { screens } = useWords();
  const leave = useContext(LeaveContext);
  if (!leave) throw new Error('CancelButton outside Dialog');
  return <Button onPress={leave}>{screens.shell.cancel}</Button>;
}
