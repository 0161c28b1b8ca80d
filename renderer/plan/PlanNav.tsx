import { planSheets, useShow, useView } from '../app/view.tsx';
import { SheetNav } from '../components/SheetNav.tsx';
import { useWords } from '../hooks/use-words.tsx';

/** `isAlone` where nothing stands below it in its column. */
export function PlanNav({ isAlone = false }: { isAlone?: boolean }) {
  const { screens } = useWords();
  const { planSheet } = useView();
  const show = useShow();
  return (
    <SheetNav
      title={screens.plan.title}
      sheets={planSheets.map((id) => ({ id, title: screens.planSheets.titles[id] }))}
      here={planSheet}
      onOpen={(id) => show({ planSheet: id })}
      isAlone={isAlone}
    />
  );
}
