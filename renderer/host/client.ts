import type { HostClient } from '../../core/contract/index.ts';
import { createDesktopClient } from './desktop-client.ts';
import { createWebClient } from './web-client.ts';

/** The desktop's bridge where the page runs in its window, loopback otherwise. */
export function createHostClient(): HostClient {
  return window.onechange ? createDesktopClient(window.onechange) : createWebClient();
}
