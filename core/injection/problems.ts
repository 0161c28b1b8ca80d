/** What keeps a plan from being made. Boost in Pa gauge. */
declare module '../result/result.ts' {
  interface ProblemFacts {
    'injection/no-peak-boost': Record<string, never>;
    /** Neither power, nor displacement, nor logged duty is known. */
    'injection/fuel-flow-unknown': { asked: 'power' | 'air' | 'injectors' | null };
    'injection/start-above-full': { start: number; full: number };
    'injection/ratio-profile-falls-back': { boost: number; previous: number };
    'injection/no-such-nozzle': { name: string };
  }
}

export {};
