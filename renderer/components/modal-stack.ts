/** What stands over the window, the uppermost last. */
const open: HTMLElement[] = [];

export const isUppermost = (modal: HTMLElement | null): boolean => modal !== null && open.at(-1) === modal;

/** Puts a dialog over everything that stands; the answer takes it away and lets the page be heard again. */
export function standOver(modal: HTMLElement): () => void {
  open.push(modal);
  return () => {
    open.splice(open.indexOf(modal), 1);
    quietenOthers();
  };
}

/**
 * Everything beside the uppermost dialog takes neither key nor pointer and is not read out. Each element under it gets
 * another style for that, some 10 ms of a page of the bench: not before the dialog has been painted.
 */
export function quietenOthers(): void {
  const top = open.at(-1);
  for (const element of document.body.children)
    if (element instanceof HTMLElement && element.dataset.liveAnnouncer === undefined)
      element.inert = top !== undefined && element !== top;
}
