/** The review of an installation: rules, answers, what to fix before driving. */
import './notes.ts';

export * from './answers.ts';
export * from './hydraulic-lock.ts';
export * from './review.ts';
export * from './rules.ts';
