import type { ShownKind } from '../units/index.ts';
import type { BoostEnd } from './caps.ts';
import type { GateAction, GateQuantity, GateState } from './gate.ts';

/** From a boost, a spark or a lambda to another, SI; null where there is none. */
export type StepEnds = { from: number | null; to: number | null };

/** What is worth saying of the ladder. SI. */
declare module '../result/result.ts' {
  interface NoteFacts {
    'ladder/gate': {
      quantity: GateQuantity;
      kind: ShownKind;
      limit: number;
      isLowest: boolean;
      measured: number | null;
      predicted: readonly [number, number] | null;
      closeness: number | null;
      state: GateState;
    };
    'ladder/baseline-first': { pulls: number };
    'ladder/prove-the-spray': { start: number; full: number; loss: number };
    'ladder/boost-first': { size: number };
    'ladder/half-near-edge': { edge: number };
    'ladder/half-after-knock': { knocked: number };
    'ladder/boost-ends': { boost: number; end: BoostEnd };
    'ladder/spark-after-boost': { left: number; most: number };
    'ladder/spark-half': { left: number; most: number };
    'ladder/spark-ends': { spark: number };
    'ladder/spark-brings-little': Record<string, never>;
    'ladder/spark-knocked': { spark: number };
    'ladder/no-spark-left': { left: number };
    'ladder/mixture-last': { from: number; to: number };
    'ladder/drive-again': { after: number };
    'ladder/no-shown-point': Record<string, never>;
    'ladder/fuelling-unknown': Record<string, never>;
    'ladder/fit-open': { count: number };
    'ladder/closed-road': Record<string, never>;
    'ladder/dyno-cell': Record<string, never>;
    'ladder/methanol-care': Record<string, never>;
    'ladder/boost-breaks-engines': Record<string, never>;
    'ladder/spark-breaks-engines': Record<string, never>;
    'ladder/prove-the-fallback': { boost: number | null };
    'ladder/do-not-press-on': Record<string, never>;
    'ladder/now-baseline': { pulls: number };
    'ladder/now-go-back': { action: GateAction; toBaseline: boolean };
    'ladder/now-stop': { action: GateAction };
    'ladder/now-wait': { action: GateAction; coolDown: number };
    'ladder/now-drive': { pulls: number };
    'ladder/now-drive-again': Record<string, never>;
    'ladder/now-more-pulls': { more: number };
    'ladder/now-mend-the-spray': { loss: number; allowed: number };
    'ladder/now-loss': { loss: number };
    'ladder/now-fit': { count: number };
    'ladder/now-spray': StepEnds;
    'ladder/now-boost': StepEnds;
    'ladder/now-spark': StepEnds;
    'ladder/now-mixture': StepEnds;
    'ladder/now-nothing': StepEnds;
    'ladder/now-done': Record<string, never>;
  }
}
