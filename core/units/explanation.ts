import type { ShownKind } from './unit-choice.ts';

/**
 * Where a number comes from, as data: the screen's "where from", the terminal and the documents are made from
 * it. Symbols are those of the formula; values are SI, shown by their kind.
 */
export type Explanation = {
  /** Which number, `injection/need`; `core/words` need not know it. */
  readonly id: string;
  /** As plain text, and typeset where that reads better. */
  readonly formula: string;
  readonly tex?: string;
  readonly inputs: readonly {
    readonly symbol: string;
    readonly value: number;
    readonly kind: ShownKind;
    /** A loss, a step, a pressure across a part: it counts from no zero. */
    readonly isDifference?: true;
  }[];
  /** Citation with edition, or plainly `common practice` or `from memory`. */
  readonly source: string;
  readonly validRange: readonly {
    readonly symbol: string;
    readonly from: number;
    readonly to: number;
    readonly kind: ShownKind;
    readonly isDifference?: true;
  }[];
};
