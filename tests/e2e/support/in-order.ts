import { expect, type Page } from 'playwright/test';
import { overflowing } from './overflowing.ts';
import { seriousFindings } from './serious-findings.ts';

/** Nothing is wider than its box where the walk stands now. */
export async function expectToFit(page: Page, where: string): Promise<void> {
  await expect.poll(() => overflowing(page), { message: `wider than its box: ${where}` }).toEqual([]);
}

/** Where a walk ends: everything fits, and nothing keeps anybody out. */
export async function expectInOrder(page: Page, where: string): Promise<void> {
  await expectToFit(page, where);
  expect(await seriousFindings(page), where).toEqual([]);
}
