import type { Entry } from '../../core/session/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { Select } from '../components/Select.tsx';
import { useWords } from '../hooks/use-words.tsx';

export type AgainChoiceProps = {
  readonly ledger: readonly Entry[];
  readonly chosen: string | null;
  readonly onChoose: (entryId: string) => void;
};

/** Entries that can be driven again: kept, and with pulls to hold the new ones against. */
export function repeatable(ledger: readonly Entry[]): readonly Entry[] {
  return ledger.filter((e) => e.state === 'kept' && e.kind !== 'nothing' && e.runs.length > 0);
}

/** Which earlier entry is driven again; the baseline shows the whole day's drift, a later one needs less undoing. */
export function AgainChoice({ ledger, chosen, onChoose }: AgainChoiceProps) {
  const { screens, show } = useWords();
  return (
    <Select
      label={screens.ladder.againWhich}
      hint={screens.ladder.againHint}
      options={repeatable(ledger).map((e) => ({
        id: e.id,
        label: `${ledger.indexOf(e)} ${entryTitle(e, show)}`,
      }))}
      value={chosen ?? ''}
      onChange={onChoose}
    />
  );
}
