import type { HostClient } from '../../core/contract/index.ts';
import { checkAnswer } from '../host/check-answer.ts';

export type AskHost = (name: string, input: unknown) => Promise<unknown>;

/** The host for a screen that is drawn once, beside it: it answers, and tells nothing by itself. */
export function createAskingClient(ask: AskHost): HostClient {
  return {
    request: async (name, input) => checkAnswer(name, await ask(name, input)),
    upload: () => Promise.reject(new Error('a picture takes no files')),
    subscribe: () => () => {},
  };
}
