const candidates =
  'a[href], button, input, select, textarea, summary, [tabindex], [contenteditable="true"], iframe, audio, video';

/** What Tab stops at inside an element, in the order of the page. Of the radios of a group that is one alone. */
export function tabbableIn(root: HTMLElement): readonly HTMLElement[] {
  const all = [...root.querySelectorAll<HTMLElement>(candidates)].filter(
    (element) => element.tabIndex >= 0 && !element.matches(':disabled') && element.checkVisibility(),
  );
  const stopsOfGroups = new Map<string, HTMLElement>();
  for (const radio of all.filter(isRadio))
    if (radio.checked || !stopsOfGroups.has(radio.name)) stopsOfGroups.set(radio.name, radio);
  return all.filter((element) => !isRadio(element) || stopsOfGroups.get(element.name) === element);
}

const isRadio = (element: HTMLElement): element is HTMLInputElement =>
  element instanceof HTMLInputElement && element.type === 'radio' && element.name !== '';

/**
 * Where Tab leads from the element that has the focus, where that is not the next in the page: round the end of
 * `root`, or into it. Null leaves it to the browser.
 */
export function tabTarget(root: HTMLElement, isBack: boolean): HTMLElement | null {
  const stops = tabbableIn(root);
  const [first = root, last = root] = [stops[0], stops.at(-1)];
  const here = document.activeElement;
  if (!here || !root.contains(here)) return isBack ? last : first;
  // From an unchecked radio Tab leaves its group as from the checked one.
  const isAt = (stop: HTMLElement) =>
    stop === here ||
    (isRadio(stop) && here instanceof HTMLInputElement && here.type === 'radio' && here.name === stop.name);
  if (isBack) return isAt(first) || here === root ? last : null;
  return isAt(last) || (here === root && stops.length === 0) ? first : null;
}
