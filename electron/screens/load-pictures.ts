import { pathToFileURL } from 'node:url';

/** What a window is going to show, as the built screens draw it. */
export type Picture = {
  readonly html: string;
  readonly language: string;
  readonly theme: string;
};

/** Null where the host has no answer. */
export type DrawPicture = (
  ask: (name: string, input: unknown) => Promise<unknown>,
) => Promise<Picture | null>;

/** The drawing script that is built with the screens: they are not ours to import, the built file is. */
export async function loadPictures(script: string): Promise<DrawPicture> {
  const { drawPicture } = await import(pathToFileURL(script).href);
  return drawPicture;
}
