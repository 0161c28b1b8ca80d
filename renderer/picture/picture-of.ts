/** The picture of the first screen that the host sent along, while it is shown. */
export function pictureOf(page: Document): HTMLElement | null {
  return page.getElementById('picture');
}
