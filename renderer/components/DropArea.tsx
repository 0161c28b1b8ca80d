import { FileUp } from 'lucide-react';
import styles from './DropArea.module.css';
import { FilePicker } from './FilePicker.tsx';

export type DropAreaProps = { readonly label: string; readonly onFiles: (files: File[]) => void };

/**
 * A marked place for files. The whole window takes a drop, wherever it falls; this is where a newcomer looks for
 * it, and it opens the file dialog too.
 */
export function DropArea({ label, onFiles }: DropAreaProps) {
  return (
    <div className={styles.area}>
      <FilePicker onFiles={onFiles} look="plain" isWide>
        <FileUp aria-hidden />
        {label}
      </FilePicker>
    </div>
  );
}
