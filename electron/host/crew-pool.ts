import type { Result } from '../../core/result/index.ts';
import { hireCrew, type LogCrew } from './log-crew.ts';

/** An idle crew is let go after this long [ms]: its worker holds some tens of megabytes. */
const idleFor_ms = 60_000;

/** One crew at the ready, since a worker takes longer to start than many a log takes to read. */
export type CrewPool = {
  /** Hires ahead, for work that is about to come. */
  readonly prepare: () => void;
  /** Lends a crew; it comes back unless the work failed or was called off, for then it may be in the midst of it. */
  readonly lend: <T>(work: (crew: LogCrew) => Promise<Result<T>>) => Promise<Result<T>>;
  readonly close: () => void;
};

export function createCrewPool(): CrewPool {
  let idle: LogCrew | null = null;
  let leaving: ReturnType<typeof setTimeout> | undefined;

  function dismiss(): void {
    clearTimeout(leaving);
    idle?.end();
    idle = null;
  }

  function keep(crew: LogCrew): void {
    dismiss();
    idle = crew;
    leaving = setTimeout(dismiss, idleFor_ms).unref();
  }

  return {
    prepare: () => {
      if (!idle) keep(hireCrew());
    },
    lend: async (work) => {
      const crew = idle ?? hireCrew();
      idle = null;
      clearTimeout(leaving);
      let isSound = false;
      try {
        const result = await work(crew);
        isSound = result.ok;
        return result;
      } finally {
        if (isSound) keep(crew);
        else crew.end();
      }
    },
    close: dismiss,
  };
}
