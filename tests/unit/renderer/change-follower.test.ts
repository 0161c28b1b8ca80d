import { describe, expect, it } from 'vitest';
import { changeFollower } from '../../../renderer/hooks/change-follower.ts';

function window(at: number | null) {
  const state = { revision: at, loads: 0 };
  const follower = changeFollower(
    () => state.revision,
    () => {
      state.loads++;
    },
  );
  return { state, follower };
}

describe('a change of the session that the host tells of', () => {
  it('is read anew where the window has another revision, or none', () => {
    const { state, follower } = window(3);
    follower.hear(4);
    expect(state.loads).toBe(1);
    const empty = window(null);
    empty.follower.hear(1);
    expect(empty.state.loads).toBe(1);
  });

  it('is known already where its answer was quicker', () => {
    const { state, follower } = window(4);
    follower.hear(4);
    expect(state.loads).toBe(0);
  });

  it('waits for the answer of the edit that made it, and is not read beside it', async () => {
    const { state, follower } = window(3);
    await follower.during(async () => {
      follower.hear(4);
      expect(state.loads).toBe(0);
      state.revision = 4;
    });
    expect(state.loads).toBe(0);
  });

  it('is read once the last edit is done, where somebody else went on meanwhile', async () => {
    const { state, follower } = window(3);
    let finish = () => {};
    const second = follower.during(() => new Promise<void>((resolve) => (finish = resolve)));
    await follower.during(async () => {
      state.revision = 4;
      follower.hear(4);
      follower.hear(6);
    });
    expect(state.loads).toBe(0);
    state.revision = 5;
    finish();
    await second;
    expect(state.loads).toBe(1);
  });

  it('is read after an edit that failed', async () => {
    const { state, follower } = window(3);
    const failed = follower.during(async () => {
      follower.hear(4);
      throw new Error('host gone');
    });
    await expect(failed).rejects.toThrow('host gone');
    expect(state.loads).toBe(1);
  });
});
