import { useState } from 'react';
import { Button } from '../components/Button.tsx';
import { CancelButton } from '../components/CancelButton.tsx';
import { Caution } from '../components/Caution.tsx';
import { Dialog } from '../components/Dialog.tsx';
import { FactList } from '../components/FactList.tsx';
import { Select } from '../components/Select.tsx';
import { useAnswer } from '../hooks/use-answer.ts';
import { usePreferences } from '../hooks/use-preferences.tsx';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';

/** Chooses an earlier session of the car whose repeatability supports the verdicts of the open one. */
export function LeaningDialog({ onClose }: { onClose: () => void }) {
  const { screens, show } = useWords();
  const { snapshot, edit } = useSession();
  const { preferences } = usePreferences();
  const [folder, setFolder] = useState<string | null>(null);
  const listed = useAnswer('sessions.list', {}, 0);
  const found = useAnswer('sessions.repeatability', folder === null ? null : { folder }, 0, folder ?? '');
  const said = screens.leaning;
  if (!snapshot) return null;
  const { leansOn, car } = snapshot.session;
  // Those of the usual folder and those opened from elsewhere, each once.
  const known = new Map(
    [...preferences.recent, ...(listed.value?.sessions ?? [])].map((s) => [s.folder, s.name]),
  );
  known.delete(snapshot.folder);
  const options = [...known].map(([id, label]) => ({ id, label }));
  const earlier = found.value;
  const told = earlier?.repeatability ?? null;
  const share = (value: number) => show.quantity(value, 'share');
  const lean = async () => {
    if (!earlier || !told) return;
    const { sessionId, name } = earlier;
    const leaning = { sessionId, name, deviation_percent: told.deviationShare * 100, degrees: told.degrees };
    if (await edit({ type: 'leaning.set', leansOn: leaning })) onClose();
  };
  const stop = async () => {
    if (await edit({ type: 'leaning.set', leansOn: null })) onClose();
  };
  return (
    <Dialog
      title={said.title}
      onClose={onClose}
      problems={found.problems}
      actions={
        <>
          <Button look="main" onPress={lean} isDisabled={told === null}>
            {said.lean}
          </Button>
          {leansOn && <Button onPress={stop}>{said.stop}</Button>}
          <CancelButton />
        </>
      }
    >
      <p>{said.why}</p>
      {leansOn && <p>{said.now(leansOn.name, share(leansOn.deviation_percent / 100))}</p>}
      {options.length === 0 && !listed.isBusy ? (
        <p>{said.noEarlier}</p>
      ) : (
        <Select
          label={said.earlier}
          placeholder={said.choose}
          options={options}
          value={folder}
          onChange={setFolder}
        />
      )}
      {found.isBusy && <p>{said.looking}</p>}
      {earlier && !told && <p>{said.tooFew}</p>}
      {earlier && told && (
        <FactList
          facts={[
            ...(earlier.carName === '' ? [] : [{ name: said.car, value: earlier.carName }]),
            { name: said.scatter, value: share(told.deviationShare) },
            { name: said.told, value: said.sparePulls(show.number(told.degrees)) },
          ]}
        />
      )}
      {earlier && earlier.carName !== '' && car.name !== '' && earlier.carName !== car.name && (
        <Caution>{said.otherCar(earlier.carName, car.name)}</Caution>
      )}
    </Dialog>
  );
}
