/** How much and how slowly a client may send. Our own judgement: a page on the same machine is far inside. */
export type Limits = {
  /** Largest JSON body. A session's edits are kilobytes. */
  readonly jsonBytes: number;
  /** A JSON body must be whole after this. */
  readonly json_ms: number;
  /** Largest log file. */
  readonly uploadBytes: number;
  /** An upload must keep this mean rate, once `uploadGrace_ms` have passed. */
  readonly uploadRate_B_s: number;
  readonly uploadGrace_ms: number;
  /** The request line and the headers must be whole after this. */
  readonly headers_ms: number;
  /** A client that takes nothing of its answer for this long is dropped. */
  readonly stalled_ms: number;
  readonly connections: number;
};

export const defaultLimits: Limits = {
  jsonBytes: 8 * 1024 * 1024,
  json_ms: 10_000,
  uploadBytes: 4 * 1024 * 1024 * 1024,
  uploadRate_B_s: 64 * 1024,
  uploadGrace_ms: 10_000,
  headers_ms: 5_000,
  stalled_ms: 30_000,
  connections: 100,
};
