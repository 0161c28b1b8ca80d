import type { Page } from 'playwright/test';

/** What may be wider than its box, each with its reason. */
const mayOverflow = [
  // Cut on purpose, for a screen reader alone.
  '.visually-hidden',
  '[data-react-aria-prevent-focus] *, [data-testid="hidden-select-container"] *',
  // A field scrolls what is typed in it.
  'input, textarea, select',
  // A chart cuts its lines at the ends of its axes.
  'figure, figure *',
  // The last tick's text stands centred on the end of the ledger's scale, within the padding beside it.
  'header > [aria-hidden][class*="_scale_"]',
  // A table of an engine control can have more columns than any window; its frame scrolls.
  '[role="grid"] *, :has(> [role="grid"])',
  // Formulas are as wide as they are, and their frame scrolls.
  'math, math *, :has(> math)',
].join(', ');

/**
 * Everything on the page whose content is wider than itself by more than a pixel, be it cut, sticking out or
 * scrolled sideways. A text that ends in an ellipsis by its style is not counted.
 *
 * @returns one line each: what it is, by how much, the start of its text
 */
export async function overflowing(page: Page): Promise<string[]> {
  await page.evaluate(() => document.fonts.ready);
  return page.evaluate((exceptions) => {
    const found: string[] = [];
    for (const element of document.querySelectorAll<HTMLElement>('body, body *:not(svg, svg *)')) {
      const beyond = element.scrollWidth - element.clientWidth;
      // An inline box has no width of its own: its block is looked at. What is one pixel wide is for a reader.
      if (beyond <= 1 || element.clientWidth <= 1 || element.matches(exceptions)) continue;
      const style = getComputedStyle(element);
      if (style.textOverflow === 'ellipsis' || !element.checkVisibility({ visibilityProperty: true }))
        continue;
      const name = `${element.tagName.toLowerCase()}.${element.className}`;
      found.push(
        `${name} (${style.overflowX}) by ${beyond} px: ${element.textContent.replace(/\s+/g, ' ').slice(0, 80)}`,
      );
    }
    return found;
  }, mayOverflow);
}
