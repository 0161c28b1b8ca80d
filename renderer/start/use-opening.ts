import { useState } from 'react';
import type { Problems } from '../../core/result/index.ts';
import { useShow } from '../app/view.tsx';
import { useSession } from '../hooks/use-session.tsx';

/** Opens a session folder and goes to the bench; what stood in the way is kept to be shown. */
export function useOpening() {
  const { open } = useSession();
  const show = useShow();
  const [isOpening, setOpening] = useState(false);
  const [problems, setProblems] = useState<Problems | null>(null);
  return {
    isOpening,
    problems,
    open: async (folder: string): Promise<boolean> => {
      setOpening(true);
      const answer = await open(folder);
      setOpening(false);
      setProblems(answer.ok ? null : answer.problems);
      if (answer.ok) show({ screen: 'bench', beforeId: null, afterId: null, band: null, dialog: null });
      return answer.ok;
    },
  };
}
