import { useView } from '../app/view.tsx';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import type { SectionId } from '../sheets/field-specs.ts';
import { useSheet } from '../sheets/use-sheet.ts';
import { Follows } from './Follows.tsx';
import styles from './SetupScreen.module.css';
import { SetupSection } from './SetupSection.tsx';

const order: readonly SectionId[] = ['car', 'air', 'limits', 'engine', 'fluid', 'fit'];

/** The car and everything on it, a section at a time; what follows from the numbers stands beside them. */
export function SetupScreen() {
  const { screens } = useWords();
  const { view, show } = useView();
  const sheet = useSheet();
  if (!sheet) return null;
  const said = screens.setup;
  const section = order.find((s) => s === view.section) ?? 'car';
  return (
    <>
      <nav className={styles.sections} aria-label={said.title}>
        <p className={styles.title}>{said.title}</p>
        {order.map((id) => (
          <button
            key={id}
            type="button"
            className={cx(styles.section, id === section && styles.here)}
            aria-current={id === section ? 'true' : undefined}
            onClick={() => show({ section: id })}
          >
            {said.sections[id]}
          </button>
        ))}
      </nav>
      <main className={styles.main} id="main" tabIndex={-1}>
        <h1>{said.sections[section]}</h1>
        <p className={styles.lead}>{said.leads[section]}</p>
        <SetupSection key={section} section={section} sheet={sheet} />
      </main>
      <Follows section={section} doc={sheet.doc} />
    </>
  );
}
