import type { Entry } from '../../core/session/index.ts';
import { Button, type ButtonLook } from '../components/Button.tsx';
import { useEntries } from '../hooks/use-entries.tsx';
import { useWords } from '../hooks/use-words.tsx';

type DropButtonProps = Pick<ButtonLook, 'look'> & { readonly entry: Pick<Entry, 'id'> };

/**
 * Drops a change. It says so with the press, before the host has kept it and what comes next is worked out; a second
 * press meanwhile does nothing.
 */
export function DropButton({ entry, look }: DropButtonProps) {
  const { screens } = useWords();
  const { ledger, setState } = useEntries();
  const isDropped = ledger.find((e) => e.id === entry.id)?.state === 'dropped';
  return (
    <>
      <Button look={look} isWide onPress={() => (isDropped ? undefined : setState(entry.id, 'dropped'))}>
        {isDropped ? screens.now.dropped : screens.now.dropChange}
      </Button>
      <span className="visually-hidden" role="status">
        {isDropped ? screens.now.dropped : ''}
      </span>
    </>
  );
}
