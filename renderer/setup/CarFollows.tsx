import { entryTitle } from '../../core/words/index.ts';
import { Caution } from '../components/Caution.tsx';
import { FactList } from '../components/FactList.tsx';
import { useLedger } from '../hooks/use-ledger.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';

/** What mass, air and limits do to the ledger: its levels and effects, as they change. */
export function CarFollows({ section }: { section: 'car' | 'air' | 'limits' }) {
  const { screens, show } = useWords();
  const { snapshot } = useSession();
  const ledger = useLedger();
  const entries = snapshot?.session.ledger ?? [];
  const facts = (ledger.value?.lines ?? []).flatMap((line) => {
    const entry = entries.find((e) => e.id === line.entryId);
    if (!entry || !line.level) return [];
    const verdict = line.verdict ? screens.ledger.verdicts[line.verdict.kind] : '';
    return [
      { name: entryTitle(entry, show), value: show.quantity(line.level.mean, 'power'), small: verdict },
    ];
  });
  return (
    <>
      {section === 'limits' && <Caution>{screens.now.cautions.boost}</Caution>}
      {facts.length > 0 ? <FactList facts={facts} /> : <p>{screens.start.massFor}</p>}
    </>
  );
}
