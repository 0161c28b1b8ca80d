import type { OptionalPart } from './field-specs.ts';
import { SheetField } from './SheetField.tsx';
import { useOptionalPart } from './use-optional-part.ts';
import type { Sheet } from './use-sheet.ts';

/** The fields of a part that stands whole or not at all. */
export function OptionalFields({ part, sheet }: { part: OptionalPart; sheet: Sheet }) {
  const own = useOptionalPart(sheet, part);
  return part.fields.map((spec) => <SheetField key={spec.path} spec={spec} sheet={own} />);
}
