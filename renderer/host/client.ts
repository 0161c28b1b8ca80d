import type { HostClient } from '../../core/contract/index.ts';
import { createDesktopClient } from './desktop-client.ts';
import type { FirstAnswer } from './first-answers.ts';
import { createWebClient } from './web-client.ts';

/** The desktop's bridge where the page runs in its window, loopback otherwise. */
export function createHostClient(firstAnswer: FirstAnswer): HostClient {
  return window.onechange
    ? createDesktopClient(window.onechange, firstAnswer)
    : createWebClient('./', firstAnswer);
}
