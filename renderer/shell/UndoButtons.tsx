import { Redo2, Undo2 } from 'lucide-react';
import type { Action } from '../app/actions.ts';
import { Tooltip } from '../components/Tooltip.tsx';
import { TriggerButton } from '../components/TriggerButton.tsx';

const icons = { undo: Undo2, redo: Redo2 };

export function UndoButtons({ actions }: { actions: readonly Action[] }) {
  return (['undo', 'redo'] as const).map((id) => {
    const action = actions.find((a) => a.id === id);
    const Icon = icons[id];
    if (!action) return null;
    return (
      <Tooltip key={id} text={action.title}>
        <TriggerButton
          look="icon"
          aria-label={action.title}
          isDisabled={!action.isEnabled}
          onPress={action.run}
        >
          <Icon aria-hidden />
        </TriggerButton>
      </Tooltip>
    );
  });
}
