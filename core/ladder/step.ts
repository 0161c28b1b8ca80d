import type { Note } from '../result/index.ts';
import type { Explanation, ShownKind } from '../units/index.ts';
import type { CoveredCells } from './covered-cells.ts';
import type { Gate, GateAction } from './gate.ts';
import type { Range } from './headroom.ts';

export const stepKinds = ['baseline', 'spray', 'boost', 'spark', 'mixture', 'nothing'] as const;
export type StepKind = (typeof stepKinds)[number];

/** The kind of quantity that a step's `from` and `to` are; null where it states none. */
export const stepQuantity: { readonly [K in StepKind]: ShownKind | null } = {
  baseline: null,
  spray: 'boost',
  boost: 'boost',
  spark: 'angle',
  mixture: 'lambda',
  nothing: null,
};

/** One planned change with what it should bring and where it stops. SI. */
export type LadderStep = {
  /** From 1, in the order to be driven. */
  readonly n: number;
  readonly kind: StepKind;
  /** Spray: none, then the start point. Spark: over the baseline's. */
  readonly from: number | null;
  readonly to: number | null;
  /** Half the usual size: a limit is near. */
  readonly isHalf: boolean;
  /** Where in the tables it applies; null for everywhere. */
  readonly cells: {
    readonly boost: Range;
    readonly engineSpeed_rad_s: Range;
    /** One by one, where the table was given. */
    readonly inTable?: CoveredCells;
  } | null;
  readonly predicted: {
    /** Crank [W]; null where no power is known. */
    readonly power: Range | null;
    /** Spark left to the predicted edge after the step [rad]; null where no point is known. */
    readonly knockHeadroom_rad: Range | null;
    /** At peak [m^3/s]. */
    readonly fluidFlow: number;
    /** Share; null where unknown. */
    readonly injectorDuty: number | null;
    /** At the port [K]. */
    readonly intake: number;
    /** Absolute [Pa]. */
    readonly manifoldPressure: number;
  };
  /** Where the predicted numbers come from. */
  readonly explanations: readonly Explanation[];
  readonly gates: readonly Gate[];
  /** What the gravest of its gates asks for; each gate says its own. */
  readonly ifClosed: GateAction;
  readonly reasons: readonly Note[];
  /** Stand where the step is decided. */
  readonly cautions: readonly Note[];
};
