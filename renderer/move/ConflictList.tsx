import type { ShownConflict } from '../../core/contract/index.ts';
import { conflictPlace, conflictValue, type NamedParts } from '../../core/words/index.ts';
import { Button } from '../components/Button.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './ConflictList.module.css';

type Side = 'mine' | 'theirs';

export type ConflictListProps = {
  readonly conflicts: readonly ShownConflict[];
  readonly parts: NamedParts;
  readonly isBusy: boolean;
  readonly onTake: (conflict: ShownConflict, side: Side) => void;
};

/** What two copies changed differently: both values side by side, with the one that stands. */
export function ConflictList({ conflicts, parts, isBusy, onTake }: ConflictListProps) {
  const { screens, show } = useWords();
  const said = screens.move;
  return (
    <section className={styles.conflicts}>
      <h2 className={styles.title}>{said.twoWays(conflicts.length)}</h2>
      <p className={styles.why}>{said.twoWaysWhy}</p>
      <ul>
        {conflicts.map((conflict) => {
          const place = conflictPlace(conflict, parts, show);
          return (
            <li key={`${conflict.record}${conflict.index}`} className={styles.conflict}>
              <h3 className={styles.place}>{place}</h3>
              {conflict.kind === 'order' ? (
                <p className={styles.why}>{said.order}</p>
              ) : (
                <div className={styles.sides}>
                  {(['mine', 'theirs'] as const).map((side) => {
                    const value = conflictValue(conflict[side], show);
                    return (
                      <div key={side} className={styles.side} data-stands={conflict.stands === side}>
                        <span className={styles.name}>{side === 'mine' ? said.here : said.copy}</span>
                        <span className={styles.value}>{value}</span>
                        {conflict.stands === side ? (
                          <span className={styles.stands}>{said.stands}</span>
                        ) : (
                          <Button
                            look="plain"
                            aria-label={said.takeOf(value, place)}
                            isDisabled={isBusy || conflict.stands === 'gone'}
                            onPress={() => onTake(conflict, side)}
                          >
                            {said.take}
                          </Button>
                        )}
                      </div>
                    );
                  })}
                </div>
              )}
              {conflict.kind !== 'order' && conflict.stands === 'other' && <p>{said.other}</p>}
              {conflict.kind !== 'order' && conflict.stands === 'gone' && <p>{said.gone}</p>}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
