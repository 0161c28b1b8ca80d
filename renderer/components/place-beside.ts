/** Kept free between what drops down, its anchor and the window's edge [px]. */
const gap = 8;

/** Puts what drops down below its anchor, or above where there is more room; it scrolls where neither is enough. */
export function placeBeside(list: HTMLElement, anchor: HTMLElement): void {
  const at = anchor.getBoundingClientRect();
  list.style.maxHeight = '';
  list.style.minWidth = `${at.width}px`;
  const { width, height } = list.getBoundingClientRect();
  const below = window.innerHeight - at.bottom - 2 * gap;
  const above = at.top - 2 * gap;
  const isBelow = height <= below || below >= above;
  const room = isBelow ? below : above;
  list.style.maxHeight = `${room}px`;
  list.style.top = `${isBelow ? at.bottom + gap : at.top - gap - Math.min(height, room)}px`;
  list.style.left = `${Math.max(gap, Math.min(at.left, window.innerWidth - width - gap))}px`;
}
