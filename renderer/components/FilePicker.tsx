import type { ReactNode } from 'react';
import { FileTrigger } from 'react-aria-components';
import type { ButtonLook } from './Button.tsx';
import { TriggerButton } from './TriggerButton.tsx';

export type FilePickerProps = {
  readonly children: ReactNode;
  readonly onFiles: (files: File[]) => void;
  readonly look?: ButtonLook['look'];
  readonly isWide?: boolean;
};

/** The button that opens the system's own file dialog. */
export function FilePicker({ children, onFiles, look = 'second', isWide = false }: FilePickerProps) {
  return (
    <FileTrigger
      allowsMultiple
      onSelect={(list) => {
        const files = list ? Array.from(list) : [];
        if (files.length > 0) onFiles(files);
      }}
    >
      <TriggerButton look={look} isWide={isWide}>
        {children}
      </TriggerButton>
    </FileTrigger>
  );
}
