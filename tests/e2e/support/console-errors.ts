import type { Page } from 'playwright/test';

/**
 * Collects what a page complains of (errors in its console, what it threw, what its policy blocked) and every
 * request to anywhere but the program itself.
 */
export function watchErrors(page: Page, origin: string): readonly string[] {
  const found: string[] = [];
  page.on('request', (request) => {
    const url = new URL(request.url());
    if (!['blob:', 'data:'].includes(url.protocol) && url.origin !== origin)
      found.push(`request to ${url.href}`);
  });
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning')
      found.push(`${message.type()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => found.push(`thrown: ${error.message}`));
  return found;
}
