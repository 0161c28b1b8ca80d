import { MoreHorizontal } from 'lucide-react';
import type { Entry } from '../../core/session/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { useShow } from '../app/view.tsx';
import { Menu } from '../components/Menu.tsx';
import { useEntries } from '../hooks/use-entries.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';

export type RowMenuProps = {
  readonly entry: Entry;
  readonly index: number;
  readonly onSelect: (side: 'before' | 'after') => void;
};

/** What can be done with one entry. */
export function RowMenu({ entry, index, onSelect }: RowMenuProps) {
  const { screens, show } = useWords();
  const showView = useShow();
  const { edit } = useSession();
  const { setState } = useEntries();
  const said = screens.ledger;
  const isKept = entry.state === 'kept';
  return (
    <Menu
      label={said.actionsOf(entryTitle(entry, show))}
      trigger={<MoreHorizontal aria-hidden />}
      parts={[
        {
          title: '',
          choices: [
            { id: 'before', label: said.setBefore, keys: 'B', run: () => onSelect('before') },
            { id: 'after', label: said.setAfter, run: () => onSelect('after') },
          ],
        },
        {
          title: '',
          choices: [
            {
              id: 'edit',
              label: said.edit,
              keys: 'E',
              run: () => showView({ dialog: { type: 'entry', entryId: entry.id } }),
            },
            ...(index > 0
              ? [
                  {
                    id: 'state',
                    label: isKept ? said.drop : said.keep,
                    keys: 'D',
                    run: () => void setState(entry.id, isKept ? 'dropped' : 'kept'),
                  },
                  {
                    id: 'remove',
                    label: said.remove,
                    isDisabled: entry.runs.length > 0,
                    run: () => void edit({ type: 'entry.remove', entryId: entry.id }),
                  },
                ]
              : []),
          ],
        },
      ]}
    />
  );
}
