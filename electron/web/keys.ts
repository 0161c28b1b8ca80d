import { randomBytes, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

const cookieName = 'onechange';

/** Who may talk to us: whoever held a one-time link, and now holds the cookie it was exchanged for. */
export type Keys = {
  /**
   * Path of the workbench, `/w-<random>/`. A cookie goes to every port of 127.0.0.1, so to other programs'
   * servers too; bound to a path that nobody can guess it goes to ours alone.
   */
  readonly base: string;
  /** A new one-time token; the one before it dies. */
  issue(): string;
  /** The cookie for a good token, which is dead from then on. */
  exchange(token: string): string | undefined;
  admits(request: IncomingMessage): boolean;
};

export function createKeys(): Keys {
  const key = randomText();
  const base = `/w-${randomText()}/`;
  let token: string | undefined;
  return {
    base,
    issue() {
      token = randomText();
      return token;
    },
    exchange(offered) {
      if (token === undefined || !isSame(offered, token)) return undefined;
      token = undefined;
      return `${cookieName}=${key}; HttpOnly; SameSite=Strict; Path=${base}`;
    },
    admits(request) {
      const cookies = (request.headers.cookie ?? '').split(';').map((one) => one.trim());
      const ours = cookies.filter((one) => one.startsWith(`${cookieName}=`));
      return ours.length === 1 && isSame(ours[0] ?? '', `${cookieName}=${key}`);
    },
  };
}

/** 256 bits that stand in a URL as they are. */
function randomText(): string {
  return randomBytes(32).toString('base64url');
}

/** Takes as long for a near miss as for a wild guess. */
function isSame(a: string, b: string): boolean {
  const [x, y] = [Buffer.from(a), Buffer.from(b)];
  return x.length === y.length && timingSafeEqual(x, y);
}
