import { letKeysGo } from './first-paint.ts';
import { pictureOf } from './picture-of.ts';

/** A picture that the screen does not come to look like must not stay in front of it [ms]: at all, and once drawn. */
const longest_ms = 8000;
const longestDrawn_ms = 600;

/**
 * Takes the host's picture away in the frame in which the screen behind it says the same, at the first click or key
 * that the screen can take, or when its time is over. Keys that were held are let go once the screen hears them.
 */
export function takeAwayWhenDrawn(root: HTMLElement): void {
  const picture = pictureOf(document);
  if (!picture) return;
  const wanted = headings(picture);
  let isDrawn = false;
  let timer = setTimeout(end, longest_ms);
  // Told after each change of the screen, before its paint.
  const observer = new MutationObserver(() => {
    if (headings(root) === wanted) return end();
    if (isDrawn || !root.querySelector('main h1')) return;
    isDrawn = true;
    letKeysGo();
    clearTimeout(timer);
    timer = setTimeout(end, longestDrawn_ms);
  });
  const endIfDrawn = () => {
    if (isDrawn) end();
  };
  observer.observe(root, { childList: true, subtree: true, characterData: true });
  for (const type of inputs) addEventListener(type, endIfDrawn, true);

  function end(): void {
    observer.disconnect();
    clearTimeout(timer);
    for (const type of inputs) removeEventListener(type, endIfDrawn, true);
    picture?.remove();
    letKeysGo();
  }
}

const inputs = ['pointerdown', 'keydown', 'wheel'] as const;

function headings(within: HTMLElement): string {
  return [...within.querySelectorAll('h1, h2')].map((heading) => heading.textContent).join('\n');
}
