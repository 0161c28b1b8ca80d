/** Lets the page take keys and paint before the next piece of a long work. */
export const otherWork = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));
