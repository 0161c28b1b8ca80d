/** What can be wrong with a question about the mixture. */
declare module '../result/result.ts' {
  interface ProblemFacts {
    'mixture/lambda-outside': { lambda: number };
    'mixture/air-not-positive': { airFlow: number };
    /** Fluid without alcohol burns nothing: no trim tells of it. */
    'mixture/no-alcohol-to-see': Record<string, never>;
    /** More alcohol than the air can burn at this lambda: no petrol would be left. */
    'mixture/alcohol-takes-all': { share: number };
    'mixture/trim-outside': { trim: number };
  }
}

export {};
