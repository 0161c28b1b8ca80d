import { SheetPoints } from '../points/SheetPoints.tsx';
import { bucketUncertainty } from '../sheets/field-specs.ts';
import { SheetField } from '../sheets/SheetField.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import section from './SetupSection.module.css';

/** What was caught in a bottle, at which setting and in which time, and how sure each reading is. */
export function BucketFields({ sheet }: { sheet: Sheet }) {
  return (
    <>
      <SheetPoints list="bucket" sheet={sheet} />
      <div className={section.fields}>
        {bucketUncertainty.map((spec) => (
          <SheetField key={spec.path} spec={spec} sheet={sheet} />
        ))}
      </div>
    </>
  );
}
