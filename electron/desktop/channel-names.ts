/** Names of the messages between the window and the main process; both sides are built from this list. */
export const channels = {
  request: 'onechange:request',
  cancel: 'onechange:cancel',
  event: 'onechange:event',
} as const;
