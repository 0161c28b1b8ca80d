import type { Locator, Page } from 'playwright';
import { expect } from 'playwright/test';

/** What has the focus: its name, whether a ring around it is seen, and how the ring stands out from what is behind. */
function focusNow(): { readonly stop: string; readonly isSeen: boolean } {
  const focused = document.activeElement;
  if (!focused || focused === document.body) return { stop: 'nothing', isSeen: false };
  // A field that is drawn by its label shows the ring there; so does the end of a curve beside its field.
  const drawn = [
    focused,
    focused.nextElementSibling,
    focused.parentElement,
    ...(focused.parentElement?.children ?? []),
  ];
  const isSeen = drawn.some((element) => {
    if (!element) return false;
    const { outlineStyle, outlineWidth, outlineColor } = getComputedStyle(element);
    return (
      outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2 && outlineColor !== 'rgba(0, 0, 0, 0)'
    );
  });
  const label = focused.getAttribute('aria-label') ?? focused.id ?? '';
  return { stop: `${focused.tagName} ${label} ${focused.textContent?.slice(0, 40)}`, isSeen };
}

/**
 * Goes through a part of the page by Tab from where the focus is: each stop shows that it has the focus and is in
 * sight, and `last` is reached.
 *
 * @param most  stops after which it is given up
 */
export async function expectFocusWalk(page: Page, last: Locator, most: number): Promise<void> {
  for (let n = 0; n < most; n++) {
    await page.keyboard.press('Tab');
    const { stop, isSeen } = await page.evaluate(focusNow);
    expect(isSeen, `the focus is seen at ${stop}`).toBe(true);
    if (await last.evaluate((element) => element === document.activeElement)) return;
  }
  throw new Error(`${most} times Tab did not reach ${last}`);
}
