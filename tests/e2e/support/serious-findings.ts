import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright/test';

/**
 * What axe finds that would keep someone out. Legacy mode keeps out of frames: the handover's is closed to
 * scripts, and its markup has tests of its own.
 */
export async function seriousFindings(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).setLegacyMode(true).analyze();
  return violations
    .filter((v) => v.impact === 'serious' || v.impact === 'critical')
    .map((v) => `${v.id}: ${v.nodes.map((n) => n.html.slice(0, 160)).join(' | ')}`);
}
