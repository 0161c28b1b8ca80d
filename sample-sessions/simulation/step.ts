/** Length of one step of the simulation [s]. */
export const step = 1e-3;

/** First-order lag: the part of the way that is gone after one step. */
export const lag = (timeConstant: number) => step / timeConstant;
