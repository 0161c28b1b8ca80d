import type { Page } from 'playwright/test';

/** Collects what a page complains of: errors in its console, what it threw, and what its policy blocked. */
export function watchErrors(page: Page): readonly string[] {
  const found: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning')
      found.push(`${message.type()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => found.push(`thrown: ${error.message}`));
  return found;
}
