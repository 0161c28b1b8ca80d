import { plainLogger, record } from './logger.ts';
import { outing } from './outing.ts';
import type { Chapter } from './story.ts';

/** Every file of one chapter: its text, what was driven for it, and where the pulls lie on its clock. */
export function recordChapter(chapter: Pick<Chapter, 'tune' | 'files'>, seed: number) {
  return chapter.files.map(({ name, pulls, isPaused }) => {
    const driven = outing(chapter.tune, { count: pulls, isPaused }, seed, name);
    const { text, pulls: logged } = record(plainLogger, driven.sections, seed, name);
    return { name, text, driven, logged };
  });
}
