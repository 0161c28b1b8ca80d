import type { SessionVersion } from '../../core/contract/index.ts';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import { changedWords } from './changed-words.ts';
import styles from './HistoryDialog.module.css';
import { whenWords } from './when-words.ts';

export type VersionListProps = {
  readonly versions: readonly SessionVersion[];
  readonly chosen: string | null;
  readonly onChoose: (file: string) => void;
};

/** When each version was saved and what it changed. */
export function VersionList({ versions, chosen, onChoose }: VersionListProps) {
  const { screens, show } = useWords();
  const said = screens.history;
  const oldest = versions.at(-1);
  const lineOf = (version: SessionVersion): string => {
    if (version.unusable) return said.unusable[version.unusable];
    if (version === oldest) return said.first;
    return changedWords(version.changed, screens, show);
  };
  const marksOf = (version: SessionVersion) =>
    [
      version.isCurrent ? said.current : '',
      version.source === 'set-aside' ? said.setAside : '',
      version.isOriginal ? said.original : '',
    ].filter((mark) => mark !== '');
  return (
    <ul className={styles.list} aria-label={said.list}>
      {versions.map((version) => (
        <li key={version.file}>
          <button
            type="button"
            className={cx(styles.version, version.file === chosen && styles.chosen)}
            aria-current={version.file === chosen}
            onClick={() => onChoose(version.file)}
          >
            <span className={styles.when}>{whenWords(version.at, show.language)}</span>
            <span className={styles.what}>{lineOf(version)}</span>
            {marksOf(version).map((mark) => (
              <span key={mark} className={styles.mark}>
                {mark}
              </span>
            ))}
          </button>
        </li>
      ))}
    </ul>
  );
}
