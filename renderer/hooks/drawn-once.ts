/** True where the screen is drawn once, on the host, and nothing can follow behind its paint. */
export const isDrawnOnce = typeof window === 'undefined';
