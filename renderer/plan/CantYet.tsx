import type { Problems } from '../../core/result/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { EmptyState } from '../components/EmptyState.tsx';
import { ProblemList } from '../components/ProblemList.tsx';
import { useWords } from '../hooks/use-words.tsx';

/** A sheet that lacks numbers: which, and the way to enter them. */
export function CantYet({ title, problems }: { title: string; problems: Problems }) {
  const { screens } = useWords();
  const show = useShow();
  return (
    <EmptyState title={title} why={screens.planSheets.cantYetWhy}>
      <ProblemList problems={problems} />
      <Button look="main" onPress={() => show({ screen: 'setup', section: 'engine' })}>
        {screens.plan.openSetup}
      </Button>
    </EmptyState>
  );
}
