import type { Span } from '../span.ts';

/** A span of rising engine speed, and the stretch of gapless log it lies in. */
export type Rise = Span & {
  readonly segment: Span;
  /** Parted by the foot from the rise before it, so the two are not one. */
  readonly isOwnMove: boolean;
};
