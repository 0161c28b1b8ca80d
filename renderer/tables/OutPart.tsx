import { useState } from 'react';
import type { Session } from '../../core/session/index.ts';
import { Button } from '../components/Button.tsx';
import { saveFile } from '../handover/save-file.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { RecordDialog } from './RecordDialog.tsx';
import styles from './Tables.module.css';
import { bytesOf, copyText } from './table-bytes.ts';
import type { TableNow } from './use-table.ts';

/** Back to the engine control's own editor, and into the ledger. */
export function OutPart({ session, of }: { session: Session; of: TableNow }) {
  const { screens, note } = useWords();
  const { say } = useToasts();
  const { snapshot } = useSession();
  const [isRecording, setRecording] = useState(false);
  const said = screens.tables;
  const { table, changes } = of;
  const extension = table.now.includes('\t') ? 'tsv' : 'csv';
  const name = table.fileName === '' ? `${table.name}.${extension}` : table.fileName;
  return (
    <section className={styles.part}>
      <h3>{said.out}</h3>
      <p className={styles.soft}>{said.outWhy}</p>
      {changes.length > 0 && (
        <p className={styles.soft}>{note({ code: 'tables/check-before-writing', facts: {} })}</p>
      )}
      <Button isWide onPress={() => say(copyText(table.now) ? said.copied : said.notCopied)}>
        {said.copy}
      </Button>
      <Button isWide onPress={() => saveFile(name, bytesOf(table.now, table.encoding), 'text/plain')}>
        {said.save}
      </Button>
      <Button
        isWide
        isDisabled={changes.length === 0 || snapshot?.readOnly !== null}
        onPress={() => setRecording(true)}
      >
        {said.record}
      </Button>
      {isRecording && <RecordDialog session={session} of={of} onClose={() => setRecording(false)} />}
    </section>
  );
}
