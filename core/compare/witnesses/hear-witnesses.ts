import type { QuantityId } from '../../log/index.ts';
import type { Note } from '../../result/index.ts';
import type { ChangeDeclaration } from '../judge-input.ts';
import type { ChangeKind, Witness, WitnessRole } from '../verdict.ts';
import type { Movement } from './movement.ts';
import {
  type Control,
  controls,
  declaredControl,
  lambdaBySpray,
  mayFollow,
  quantityRules,
} from './quantity-rules.ts';

export type Hearing = {
  readonly witnesses: readonly Witness[];
  readonly reasons: readonly Note[];
  readonly remarks: readonly Note[];
  /** The control that was changed: as declared, else the one that moved; null where nothing is to have changed. */
  readonly supposed: Control | null;
};

const controlOf = (m: Movement): Control | null => quantityRules[m.quantity]?.control ?? null;

/**
 * Did the declared change happen, and did anything else move?
 *
 * A control that moved, was not declared and may not follow from what was declared makes the two entries
 * incomparable as that step. Where nothing was declared, one moved control is taken as the change and named;
 * two are two changes. What is no control (temperatures, trims, duty) follows from the rest and refuses nothing.
 */
export function hearWitnesses(
  movements: readonly Movement[],
  declared: ChangeDeclaration | null,
  isIntakeCorrected: boolean,
): Hearing {
  const reasons: Note[] = [];
  const remarks: Note[] = [];
  const moved = new Set(
    movements.flatMap((m) => {
      const control = controlOf(m);
      return control !== null && m.hasMoved ? [control] : [];
    }),
  );
  const known = declared ? declaredControl[declared.kind] : null;
  const supposed = known ?? (declared?.kind === 'nothing' ? null : supposedControl(moved, movements));
  const explained = (m: Movement) => mayHaveFollowed(m, supposed, movements);
  const unexplained = controls.filter((control) => {
    if (!moved.has(control) || control === supposed) return false;
    return movements.some((m) => controlOf(m) === control && m.hasMoved && !explained(m));
  });
  if (known === null && declared?.kind !== 'nothing') {
    if (unexplained.length > 0 && supposed !== null) {
      const quantities = [supposed, ...unexplained].flatMap((c) => loudest(movements, c)?.quantity ?? []);
      reasons.push({ code: 'compare/more-than-one', facts: { quantities } });
    } else if (supposed !== null) {
      const m = loudest(movements, supposed);
      if (m)
        remarks.push({ code: 'compare/moved-named', facts: { quantity: m.quantity, delta: m.most.delta } });
    }
  } else {
    for (const control of unexplained) {
      const m = loudest(movements, control);
      if (!m || !declared) continue;
      const { delta, half } = m.most;
      reasons.push({
        code: 'compare/also-moved',
        facts: { quantity: m.quantity, delta, half, declared: declared.kind },
      });
    }
  }
  const happened = declared && known ? declaredHappened(movements, known, declared, reasons, remarks) : true;
  const witnesses = movements.map((m): Witness => {
    const isDeclared = known !== null && controlOf(m) === known;
    return {
      quantity: m.quantity,
      before: m.before,
      after: m.after,
      delta: m.delta,
      interval95: [m.delta - m.half, m.delta + m.half],
      declared: isDeclared,
      role: roleOf(m, { isDeclared, happened, isIntakeCorrected, supposed, explained: explained(m) }),
      remark: [...reasons, ...remarks].find((n) => isAbout(n, m.quantity)) ?? null,
    };
  });
  return { witnesses, reasons, remarks, supposed };
}

function isAbout(note: Note, quantity: QuantityId): boolean {
  return 'quantity' in note.facts && note.facts.quantity === quantity;
}

/** With nothing declared: the moved control that explains most of what else moved. */
function supposedControl(moved: ReadonlySet<Control>, movements: readonly Movement[]): Control | null {
  let best: Control | null = null;
  let fewest = Infinity;
  for (const control of moved) {
    const left = movements.filter(
      (m) =>
        m.hasMoved &&
        controlOf(m) !== null &&
        controlOf(m) !== control &&
        !mayHaveFollowed(m, control, movements),
    ).length;
    if (left < fewest) {
      fewest = left;
      best = control;
    }
  }
  return best;
}

function mayHaveFollowed(m: Movement, of: Control | null, all: readonly Movement[]): boolean {
  const control = controlOf(m);
  if (control === null || of === null) return control === null;
  if (mayFollow[of].includes(control)) return true;
  // Alcohol that burns makes an open-loop mixture richer by itself, as long as nobody moved the target.
  const isTargetMoved = all.some((x) => x.quantity === 'lambdaTarget' && x.hasMoved);
  return (
    of === 'fluid' && m.quantity === 'lambda' && !isTargetMoved && Math.abs(m.most.delta) <= lambdaBySpray
  );
}

function loudest(movements: readonly Movement[], control: Control): Movement | null {
  const of = movements.filter((m) => controlOf(m) === control);
  // What was measured speaks before what was asked for.
  const measured = of.filter((m) => m.hasMoved && !isTarget(m.quantity));
  const pool = measured.length > 0 ? measured : of;
  return pool.reduce<Movement | null>((best, m) => (best && best.size >= m.size ? best : m), null);
}

function isTarget(quantity: QuantityId): boolean {
  return quantity === 'boostTarget' || quantity === 'manifoldPressureTarget' || quantity === 'lambdaTarget';
}

/** Under this share of the declared size the change is not in the data; under the next it came in part. */
const missingShare = 0.5;
const partlyShare = 0.75;

function declaredHappened(
  movements: readonly Movement[],
  control: Control,
  declared: ChangeDeclaration,
  reasons: Note[],
  remarks: Note[],
): boolean {
  const of = movements.filter((m) => controlOf(m) === control);
  const measured = of.filter((m) => !isTarget(m.quantity));
  const m = loudest(measured.length > 0 ? measured : of, control);
  const kind: ChangeKind = declared.kind;
  if (!m) {
    remarks.push({ code: 'compare/declared-unseen', facts: { kind } });
    return true;
  }
  const { size } = declared;
  const isSized = size !== null && size !== 0 && sizedQuantities[control]?.includes(m.quantity) === true;
  const along = isSized ? m.most.delta * Math.sign(size) : Math.abs(m.most.delta);
  const least = isSized ? Math.min(m.threshold, missingShare * Math.abs(size)) : 0.6 * m.threshold;
  const isMissing = along < least || (isSized && along + m.most.half < missingShare * Math.abs(size));
  const facts = { quantity: m.quantity, delta: m.most.delta };
  if (isMissing) {
    reasons.push({
      code: 'compare/declared-missing',
      facts: { ...facts, half: m.most.half, size: isSized ? size : null, kind },
    });
  }
  if (isSized && along < partlyShare * Math.abs(size) && along + m.most.half < Math.abs(size)) {
    const retard = movements.find((x) => x.quantity === 'knockRetard');
    const took = control === 'spark' && retard?.hasMoved ? Math.abs(retard.most.delta) : null;
    remarks.push({ code: 'compare/declared-partly', facts: { ...facts, size, retard: took } });
  }
  return !isMissing;
}

/** Quantities in whose unit the size of a declared change is given. */
const sizedQuantities: Partial<Record<Control, readonly QuantityId[]>> = {
  boost: ['boost', 'manifoldPressure', 'boostTarget', 'manifoldPressureTarget'],
  spark: ['sparkAdvance'],
  mixture: ['lambda', 'lambdaTarget'],
};

function roleOf(
  m: Movement,
  context: {
    isDeclared: boolean;
    happened: boolean;
    isIntakeCorrected: boolean;
    supposed: Control | null;
    explained: boolean;
  },
): WitnessRole {
  if (context.isDeclared) return context.happened ? 'declared-happened' : 'declared-missing';
  if (
    m.quantity === 'intakeTemperature' &&
    context.isIntakeCorrected &&
    Math.abs(m.delta) > Math.max(1, m.half)
  ) {
    return 'corrected';
  }
  if (!m.hasMoved) return 'steady';
  if (controlOf(m) === null) return m.quantity === 'knockRetard' ? 'moved' : 'follows';
  if (controlOf(m) === context.supposed) return 'moved';
  return context.explained ? 'follows' : 'moved';
}
