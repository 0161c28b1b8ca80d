import { renderToString } from 'react-dom/server';
import type { Preferences } from '../../core/contract/index.ts';
import { App } from '../app/App.tsx';
import { openingQuestions } from '../app/ask-opening.ts';
import { askShared } from '../host/ask-shared.ts';
import { type AskHost, createAskingClient } from './asking-client.ts';

export type Picture = { readonly html: string } & Pick<Preferences, 'language' | 'theme'>;

let last: { readonly key: string; readonly picture: Picture } | null = null;

/**
 * What a window is going to show when it opens, as HTML: drawn on the host by the very parts that draw the screen, so
 * that it can be seen while the program is still being started. The last one is kept for as long as it holds.
 *
 * @param ask the host's answer to a request, as `HostPort.handle` gives it
 * @returns null where the host has no answer
 */
export async function drawPicture(ask: AskHost): Promise<Picture | null> {
  const client = createAskingClient(ask);
  const [session, preferences] = await Promise.all([
    client.request('session.get', {}),
    client.request('preferences.get', {}),
  ]);
  if (!session.ok || !preferences.ok) return null;
  const key = JSON.stringify([session.value, preferences.value]);
  if (last?.key === key) return last.picture;
  const questions = session.value ? openingQuestions(session.value) : [];
  const answers = await Promise.all(questions.map((question) => askShared(client, question).answer));
  if (!answers.every((answer) => answer.ok)) return null;
  const first = { session: session.value, preferences: preferences.value };
  const { language, theme } = preferences.value;
  const picture = { html: renderToString(<App client={client} first={first} />), language, theme };
  last = { key, picture };
  return picture;
}
