import { postRequest } from './post-request.ts';

/** What every start asks, with empty input. */
const names = ['session.get', 'preferences.get'];

const ask = (name: string): Promise<unknown> =>
  window.onechange ? window.onechange.request(name, {}, crypto.randomUUID()) : postRequest('./', name, {});

// Imported before everything else, so that the host answers while the program itself is being started.
const asked = new Map(names.map((name) => [name, ask(name)]));
// Whoever takes one hears of its failure; where nobody does, nobody misses it.
for (const answer of asked.values()) answer.catch(() => {});

/** The answer to a question of the start that is on its way already, once: the next time the host is asked anew. */
export function firstAnswer(name: string): Promise<unknown> | null {
  const answer = asked.get(name) ?? null;
  asked.delete(name);
  return answer;
}

export type FirstAnswer = typeof firstAnswer;
