import { useState } from 'react';
import type { OptionalPart } from './field-specs.ts';
import { valueAt, withValue } from './sheet-doc.ts';
import type { Sheet } from './use-sheet.ts';

/**
 * A sheet for a part that the session holds whole or not at all: what is typed waits here until everything that
 * the part can't be without is there, and the part goes when one of these is emptied.
 */
export function useOptionalPart(sheet: Sheet, { path, required }: OptionalPart): Sheet {
  const [waiting, setWaiting] = useState<Record<string, unknown>>({});
  const kept = valueAt(sheet.doc, path) as Record<string, unknown> | null;
  const doc = kept ? sheet.doc : withValue(sheet.doc, path, waiting);
  return {
    doc,
    put: (fieldPath, value, typed = null) => {
      const next = { ...(kept ?? waiting), [fieldPath.slice(path.length + 1)]: value };
      if (required.every((key) => typeof next[key] === 'number'))
        return sheet.put(path, next, typed, fieldPath);
      setWaiting(next);
      return kept === null || sheet.put(path, null, null, fieldPath);
    },
    typedAt: (fieldPath, unit) => {
      const value = valueAt(doc, fieldPath);
      if (typeof value !== 'number') return null;
      return (kept && sheet.typedAt(fieldPath, unit)) || { value, unit };
    },
  };
}
