import type { VerdictKind } from '../../core/compare/index.ts';

export type Tone = 'gain' | 'loss' | 'doubt' | 'equal' | 'refused';

/** The ink of a verdict. */
export function toneOf(kind: VerdictKind): Tone {
  switch (kind) {
    case 'gain':
      return 'gain';
    case 'loss':
      return 'loss';
    case 'equivalent':
      return 'equal';
    case 'undecided':
      return 'doubt';
    case 'not-comparable':
      return 'refused';
  }
}
