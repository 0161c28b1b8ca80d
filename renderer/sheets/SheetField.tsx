import { ChoiceField } from './ChoiceField.tsx';
import { FieldFault } from './FieldProblems.tsx';
import type { FieldSpec } from './field-specs.ts';
import { ListField } from './ListField.tsx';
import { SheetQuantity } from './SheetQuantity.tsx';
import { SheetText } from './SheetText.tsx';
import type { Sheet } from './use-sheet.ts';

/** One field of a sheet, by what kind of thing it holds. */
export function SheetField({ spec, sheet }: { spec: FieldSpec; sheet: Sheet }) {
  switch (spec.type) {
    case 'quantity':
      return <SheetQuantity spec={spec} sheet={sheet} />;
    case 'choice':
    case 'yes-no':
      return (
        <div>
          <ChoiceField spec={spec} sheet={sheet} />
          <FieldFault path={spec.path} />
        </div>
      );
    case 'text':
      return <SheetText path={spec.path} sheet={sheet} />;
    case 'list':
      return <ListField path={spec.path} sheet={sheet} />;
  }
}
