import { useWords } from '../hooks/use-words.tsx';
import { type SectionId, sections } from '../sheets/field-specs.ts';
import { SheetField } from '../sheets/SheetField.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import { BucketEditor } from './BucketEditor.tsx';
import { FitReviewList } from './FitReviewList.tsx';
import { NozzleEditor } from './NozzleEditor.tsx';
import styles from './SetupSection.module.css';

/** The fields of one section, in their groups. */
export function SetupSection({ section, sheet }: { section: SectionId; sheet: Sheet }) {
  const { screens } = useWords();
  const said = screens.setup;
  if (section === 'fit') return <FitReviewList sheet={sheet} />;
  return (
    <div className={styles.groups}>
      {sections[section].map(({ group, fields }) => (
        <fieldset key={group ?? section} className={styles.group}>
          <legend className={group ? styles.legend : 'visually-hidden'}>
            {group ? said.groups[group] : said.sections[section]}
          </legend>
          <div className={styles.fields}>
            {fields.map((spec) => (
              <SheetField key={spec.path} spec={spec} sheet={sheet} />
            ))}
          </div>
        </fieldset>
      ))}
      {section === 'fluid' && (
        <>
          <fieldset className={styles.group}>
            <legend className={styles.legend}>{said.groups.nozzles}</legend>
            <NozzleEditor sheet={sheet} />
          </fieldset>
          <fieldset className={styles.group}>
            <legend className={styles.legend}>{said.groups.bucket}</legend>
            <BucketEditor sheet={sheet} />
          </fieldset>
        </>
      )}
    </div>
  );
}
