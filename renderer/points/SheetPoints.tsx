import { useWords } from '../hooks/use-words.tsx';
import type { Sheet } from '../sheets/use-sheet.ts';
import { PointList } from './PointList.tsx';
import { type PointListId, pointLists, pointsAt } from './point-lists.ts';

/** One of the setup's lists of points, by its name. */
export function SheetPoints({ list, sheet }: { list: PointListId; sheet: Sheet }) {
  const { screens } = useWords();
  const { lists, columns: labels } = screens.setup.points;
  const { path, columns } = pointLists[list];
  return (
    <PointList
      label={lists[list].label}
      hint={lists[list].hint}
      path={path}
      rows={pointsAt(sheet.doc, list)}
      columns={columns.map((c) => ({ ...c, label: labels[c.label] }))}
      sheet={sheet}
    />
  );
}
