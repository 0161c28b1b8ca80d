export type ChangeFollower = {
  /** The host says that the session has become another. */
  readonly hear: (revision: number) => void;
  /** While an edit of this window is under way; what it makes of the session comes with its own answer. */
  readonly during: <T>(edit: () => Promise<T>) => Promise<T>;
};

/**
 * Reads the session anew when it has changed elsewhere. The host tells of every change, also of those that this
 * window has sent: the whole session is not fetched once more beside the answer that brings it.
 *
 * @param newest  revision of the session that the window has; null where it has none
 */
export function changeFollower(newest: () => number | null, load: () => void): ChangeFollower {
  let heard: number | null = null;
  let underWay = 0;
  const follow = () => {
    if (underWay > 0 || heard === null) return;
    const isKnown = heard === newest();
    heard = null;
    if (!isKnown) load();
  };
  return {
    hear: (revision) => {
      heard = revision;
      follow();
    },
    during: async (edit) => {
      underWay++;
      try {
        return await edit();
      } finally {
        underWay--;
        follow();
      }
    },
  };
}
