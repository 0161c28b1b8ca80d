export * from './dictionary.ts';
export * from './entry-title.ts';
export * from './handover-phrases.ts';
export * from './read-number.ts';
export * from './screen-words.ts';
export * from './sentences.ts';
export * from './show.ts';
export * from './verdict-sentence.ts';
