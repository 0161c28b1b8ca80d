import {
  type Car,
  CarSchema,
  type Conditions,
  ConditionsSchema,
  emptySetup,
  type Limits,
  LimitsSchema,
  type LoggedFluid,
  type Session,
  type SessionEdit,
  type Setup,
  SetupSchema,
  withLoggedFluid,
} from '../../core/session/index.ts';
import type { TypedValue } from '../../core/units/index.ts';

/** Everything that the sheets edit, as one document with dotted paths. */
export type SheetDoc = {
  readonly car: Car;
  readonly conditions: Conditions;
  readonly limits: Limits;
} & Setup;

export function sheetDocOf(session: Session): SheetDoc {
  const setup = SetupSchema.safeParse(session.setup ?? {});
  return {
    ...(setup.success ? setup.data : emptySetup),
    car: session.car,
    conditions: session.conditions,
    limits: session.limits,
  };
}

function setupPart(doc: SheetDoc): Setup {
  const { car: _car, conditions: _conditions, limits: _limits, ...setup } = doc;
  return setup;
}

/**
 * The setup as core takes it: the session's air stands in where the setup has none of its own, and what the logs
 * show of the fluid where nobody typed it.
 */
export function setupOf(doc: SheetDoc, logged: Pick<LoggedFluid, 'fluid' | 'pulls'> | null = null): Setup {
  const { air, conditions } = doc;
  return withLoggedFluid(
    {
      ...setupPart(doc),
      air: {
        ...air,
        ambient_C: air.ambient_C ?? conditions.ambient_C,
        barometer_kPa: air.barometer_kPa ?? conditions.barometer_kPa,
      },
    },
    logged,
  );
}

export function valueAt(doc: SheetDoc, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>((at, key) => (at as Record<string, unknown> | null | undefined)?.[key], doc);
}

/** The document with one value changed; nothing else is touched. */
export function withValue(doc: SheetDoc, path: string, value: unknown): SheetDoc {
  const put = (at: unknown, keys: readonly string[]): unknown => {
    const [key, ...rest] = keys;
    if (key === undefined) return value;
    const record = (at ?? {}) as Record<string, unknown>;
    return { ...record, [key]: put(record[key], rest) };
  };
  return put(doc, path.split('.')) as SheetDoc;
}

/** The edit that stores the part of the document in which `path` lies; null where the schema refuses the value. */
export function editOf(
  doc: SheetDoc,
  path: string,
  typed: TypedValue | null,
  part: string = path,
): SessionEdit | null {
  const kept = typed ? { asTyped: { [part]: typed } } : {};
  const [head] = path.split('.');
  if (head === 'car') {
    const car = CarSchema.safeParse(doc.car);
    return car.success ? { type: 'car.set', car: car.data, ...kept } : null;
  }
  if (head === 'conditions') {
    const conditions = ConditionsSchema.safeParse(doc.conditions);
    return conditions.success ? { type: 'conditions.set', conditions: conditions.data, ...kept } : null;
  }
  if (head === 'limits') {
    const limits = LimitsSchema.safeParse(doc.limits);
    return limits.success ? { type: 'limits.set', limits: limits.data } : null;
  }
  const setup = SetupSchema.safeParse(setupPart(doc));
  return setup.success ? { type: 'setup.set', setup: setup.data, ...kept } : null;
}

/** The document as the schemas keep it: defaults stand where a part was left open. */
export function withEdit(doc: SheetDoc, edit: SessionEdit): SheetDoc {
  switch (edit.type) {
    case 'car.set':
      return { ...doc, car: edit.car };
    case 'conditions.set':
      return { ...doc, conditions: edit.conditions };
    case 'limits.set':
      return { ...doc, limits: edit.limits };
    case 'setup.set':
      return { ...doc, ...SetupSchema.parse(edit.setup) };
    default:
      return doc;
  }
}
