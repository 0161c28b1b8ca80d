import { expect, type Page } from 'playwright/test';
import { overflowing } from './overflowing.ts';
import { seriousFindings } from './serious-findings.ts';

/** Nothing is wider than its box where the walk stands now. */
export async function expectToFit(page: Page, where: string): Promise<void> {
  await expect.poll(() => overflowing(page), { message: `wider than its box: ${where}` }).toEqual([]);
}

/** Where a walk ends: everything is worked out and fits, and nothing keeps anybody out. */
export async function expectInOrder(page: Page, where: string): Promise<void> {
  // What is being worked out anew stands paler for that long.
  await expect(page.locator('[aria-busy="true"]'), `worked out: ${where}`).toHaveCount(0);
  await page.evaluate(() =>
    Promise.allSettled(
      document.getAnimations().map((moving) => moving instanceof CSSTransition && moving.finished),
    ),
  );
  await expectToFit(page, where);
  expect(await seriousFindings(page), where).toEqual([]);
}
