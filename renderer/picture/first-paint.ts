import { afterPaint } from '../hooks/after-paint.ts';
import { holdKeys } from './hold-keys.ts';
import { pictureOf } from './picture-of.ts';

/** A window that is not seen paints nothing [ms]. */
const longest_ms = 250;

const hasPicture = pictureOf(document) !== null;

/** Lets the keys go that were pressed in front of the picture. */
export const letKeysGo = hasPicture ? holdKeys(window) : () => {};

// Starting the program takes the page longer than anything else: a picture that came along is painted before that.
if (hasPicture)
  await Promise.race([
    new Promise<void>((resolve) => afterPaint(resolve)),
    new Promise<void>((resolve) => setTimeout(resolve, longest_ms)),
  ]);
