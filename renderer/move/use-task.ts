import { useEffect, useRef, useState } from 'react';
import type { RequestInput, RequestName, RequestOutput } from '../../core/contract/index.ts';
import type { Problems } from '../../core/result/index.ts';
import { useHost } from '../host/HostProvider.tsx';

/** One long request of a dialog: busy, its answer or its problems; cancelled by hand or with the dialog. */
export function useTask<N extends RequestName>(name: N) {
  const host = useHost();
  const abort = useRef<AbortController | null>(null);
  const [isBusy, setBusy] = useState(false);
  const [answer, setAnswer] = useState<RequestOutput<N> | null>(null);
  const [problems, setProblems] = useState<Problems | null>(null);
  useEffect(() => () => abort.current?.abort(), []);
  return {
    isBusy,
    answer,
    problems,
    cancel: () => abort.current?.abort(),
    run: async (input: RequestInput<N>): Promise<RequestOutput<N> | null> => {
      const mine = new AbortController();
      abort.current = mine;
      setBusy(true);
      setProblems(null);
      const result = await host.request(name, input, { signal: mine.signal });
      setBusy(false);
      if (result.ok) setAnswer(result.value);
      else setProblems(result.problems);
      return result.ok ? result.value : null;
    },
  };
}
