import { config } from 'zod';

/**
 * Validation without compiling: a page's policy forbids code made from text, and the mere probe for it would
 * stand in the console as a fault. To be called before the first schema is made.
 */
export function checkWithoutCompiling(): void {
  config({ jitless: true });
}
