import type { Page } from 'playwright/test';
import { seriousFindings } from './support/serious-findings.ts';
import { expect, test } from './support/workbench.ts';

/** Dialogs by the keys that open them. */
const dialogs: readonly [string, readonly string[]][] = [
  ['watch a folder', ['f']],
  ['import from a path', ['Shift+I']],
  ['earlier versions', ['h']],
  ['open a folder', ['o']],
  ['lean on an earlier session', ['l']],
  ['what would decide it', ['w']],
];
/** Reached by name, as they have no key. */
const commands = ['Open a zip', 'Pack into a zip', 'Merge another copy', 'New session'];
const planSheets = ['Fluid', 'Ladder', 'Mixture', 'Heat', 'Tables'];

const ready = (page: Page) => expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible();

/** Every key stop shows where it is. */
async function focusIsSeen(page: Page): Promise<string[]> {
  const unseen: string[] = [];
  for (let i = 0; i < 12; i++) {
    await page.keyboard.press('Tab');
    const found = await page.evaluate(() => {
      const e = document.activeElement;
      if (!e || e === document.body) return null;
      const style = getComputedStyle(e);
      const hasRing = (one: Element | null) => {
        if (!one) return false;
        const { outlineStyle, outlineWidth } = getComputedStyle(one);
        return outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2;
      };
      // A row of the ledger draws the ring of the button in it.
      const ring = hasRing(e) || hasRing(e.closest('li'));
      // A field that is typed in draws its ring on its box, a hidden slider on the plot around it.
      const isSeen = ring || style.boxShadow !== 'none' || e.matches('input[type="range"]');
      return isSeen ? null : (e.outerHTML.slice(0, 120) as string);
    });
    if (found) unseen.push(found);
  }
  return unseen;
}

test('dialogs by key and by command have no serious finding', async ({ page }) => {
  await ready(page);
  for (const [name, keys] of dialogs) {
    for (const key of keys) await page.keyboard.press(key);
    await expect(page.getByRole('dialog'), name).toBeVisible({ timeout: 60_000 });
    expect(await seriousFindings(page), name).toEqual([]);
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toBeHidden();
  }
  for (const name of commands) {
    await page.keyboard.press('Control+k');
    await page.keyboard.type(name);
    await page.keyboard.press('Enter');
    await expect(page.getByRole('dialog', { name: 'Commands' })).toBeHidden();
    await expect(page.getByRole('dialog'), name).toBeVisible();
    expect(await seriousFindings(page), name).toEqual([]);
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toBeHidden();
  }
});

test('every tab of the bench and the dialogs of a pull have no serious finding', async ({ page }) => {
  await ready(page);
  for (const name of [/Channels/, /Why/, /Cells/, /Notes/, /Pulls/]) {
    await page.getByRole('tab', { name }).click();
    await expect(page.getByRole('tabpanel')).toBeVisible();
    expect(await seriousFindings(page), String(name)).toEqual([]);
  }
  for (const name of ['Leave out', 'Trim pull 1']) {
    await page.getByRole('button', { name, exact: true }).first().click();
    await expect(page.getByRole('dialog'), name).toBeVisible();
    expect(await seriousFindings(page), name).toEqual([]);
    await page.keyboard.press('Escape');
    await expect(page.getByRole('dialog')).toBeHidden();
  }
});

test.describe('by night', () => {
  test.use({ preferences: { theme: 'night' } });
  test('every sheet of the plan has no serious finding', async ({ page }) => {
    await ready(page);
    await page.keyboard.press('2');
    for (const name of planSheets) {
      const sheet = page.getByRole('navigation').last().getByRole('button', { name });
      await sheet.click();
      await expect(sheet).toHaveAttribute('aria-current', 'true');
      await ready(page);
      expect(await seriousFindings(page), name).toEqual([]);
    }
  });
});

test('focus is seen at every stop, and nothing moves for who asked for rest', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await ready(page);
  expect(await focusIsSeen(page)).toEqual([]);
  const moving = await page.evaluate(() => {
    const long = (list: string) => list.split(',').some((d) => Number.parseFloat(d) > 0.01);
    return [...document.querySelectorAll('*')]
      .filter((e) => {
        const { transitionDuration, animationName, animationDuration } = getComputedStyle(e);
        return long(transitionDuration) || (animationName !== 'none' && long(animationDuration));
      })
      .map((e) => e.outerHTML.slice(0, 100));
  });
  expect(moving).toEqual([]);
});
