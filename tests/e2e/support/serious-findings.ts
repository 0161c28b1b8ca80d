import axe from 'axe-core';
import type { Page } from 'playwright/test';

/**
 * What axe finds that would keep someone out. It keeps out of frames: the handover's is closed to scripts, and
 * its markup has tests of its own.
 */
export async function seriousFindings(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe.source);
  const { violations } = await page.evaluate(() => {
    const { axe: inPage } = window as unknown as { axe: typeof axe };
    return inPage.run(document, { iframes: false, resultTypes: ['violations'] });
  });
  return violations
    .filter((v) => v.impact === 'serious' || v.impact === 'critical')
    .map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 160)).join(' | ')}`);
}
