import type { ReactNode } from 'react';
import { useWords } from '../hooks/use-words.tsx';
import { SheetPoints } from '../points/SheetPoints.tsx';
import { type GroupId, optionalParts, type SectionId, sections } from '../sheets/field-specs.ts';
import { OptionalFields } from '../sheets/OptionalFields.tsx';
import { SheetField } from '../sheets/SheetField.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import { BucketFields } from './BucketFields.tsx';
import { CoastDownFit } from './CoastDownFit.tsx';
import { FitReviewList } from './FitReviewList.tsx';
import { HydrometerFields } from './HydrometerFields.tsx';
import { LoggedFluidFields } from './LoggedFluidFields.tsx';
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
          {group === 'coastDown' && (
            <div className={styles.after}>
              <CoastDownFit sheet={sheet} />
            </div>
          )}
          {group === 'pump' && (
            <div className={styles.after}>
              <SheetPoints list="pump" sheet={sheet} />
            </div>
          )}
          {group === 'ratio' && (
            <div className={styles.after}>
              <SheetPoints list="ratioProfile" sheet={sheet} />
            </div>
          )}
        </fieldset>
      ))}
      {section === 'engine' && <EngineLists sheet={sheet} />}
      {section === 'fluid' && <FluidLists sheet={sheet} />}
    </div>
  );
}

function Group({ id, children }: { id: GroupId; children: ReactNode }) {
  const { screens } = useWords();
  return (
    <fieldset className={styles.group}>
      <legend className={styles.legend}>{screens.setup.groups[id]}</legend>
      <div className={styles.stack}>{children}</div>
    </fieldset>
  );
}

function EngineLists({ sheet }: { sheet: Sheet }) {
  return (
    <>
      <Group id="injectors">
        <div className={styles.fields}>
          <OptionalFields part={optionalParts.injectors} sheet={sheet} />
        </div>
        {sheet.doc.engine.injectors && <SheetPoints list="injectorDuty" sheet={sheet} />}
      </Group>
      <Group id="curves">
        <div className={styles.lists}>
          <SheetPoints list="boostCurve" sheet={sheet} />
          <SheetPoints list="powerCurve" sheet={sheet} />
        </div>
      </Group>
    </>
  );
}

function FluidLists({ sheet }: { sheet: Sheet }) {
  return (
    <>
      <Group id="nozzles">
        <NozzleEditor sheet={sheet} />
      </Group>
      <Group id="bucket">
        <BucketFields sheet={sheet} />
      </Group>
      <Group id="hydrometer">
        <HydrometerFields sheet={sheet} />
      </Group>
      <Group id="refills">
        <LoggedFluidFields sheet={sheet} />
      </Group>
    </>
  );
}
