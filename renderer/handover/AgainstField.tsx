import { useState } from 'react';
import { Select } from '../components/Select.tsx';
import { TextField } from '../components/TextField.tsx';
import { useAnswer } from '../hooks/use-answer.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';

const none = '';
/** No folder has this name. */
const byPath = '\n';

export type AgainstFieldProps = {
  /** Folder of the other visit; null for none. */
  readonly against: string | null;
  readonly onAgainst: (folder: string | null) => void;
};

/** An earlier visit to lay beside this one: a session of the same car, or any folder by its path. */
export function AgainstField({ against, onAgainst }: AgainstFieldProps) {
  const { screens, show } = useWords();
  const { snapshot } = useSession();
  const [isByPath, setByPath] = useState(false);
  const listed = useAnswer('sessions.list', {}, 0);
  const said = screens.handover;
  const car = snapshot?.session.car.name.trim() ?? '';
  const others = (listed.value?.sessions ?? []).filter((s) => s.folder !== snapshot?.folder);
  // A car without a name can be any of them.
  const sameCar = others.filter((s) => car === '' || (s.carName ?? '').trim() === car);
  const options = [
    { id: none, label: said.againstNone },
    ...sameCar.map((s) => {
      const date = s.createdAt === null ? '' : show.date(s.createdAt.slice(0, 10));
      return { id: s.folder, label: s.name, hint: said.againstHint(s.carName ?? '', date) };
    }),
    { id: byPath, label: said.againstFolder },
  ];
  const choose = (id: string) => {
    setByPath(id === byPath);
    onAgainst(id === byPath || id === none ? null : id);
  };
  return (
    <>
      <Select
        label={said.against}
        options={options}
        value={isByPath ? byPath : (against ?? none)}
        onChange={choose}
      />
      {isByPath && (
        <TextField
          label={said.againstPath}
          hint={said.againstPathHint}
          defaultValue={against ?? ''}
          onBlur={(event) => {
            const path = (event.target as HTMLInputElement).value.trim();
            onAgainst(path === '' ? null : path);
          }}
        />
      )}
    </>
  );
}
