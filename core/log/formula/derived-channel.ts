import { z } from 'zod';
import { fail, ok, type Problem, type Result } from '../../result/index.ts';
import { type Kind, kindOf, kinds, units } from '../../units/index.ts';
import { type Channel, channelOf, type Log } from '../channel.ts';
import { type QuantityId, quantities, quantityIds } from '../quantity.ts';
import type { Scale } from './bare-number.ts';
import { checkUnits } from './check-units.ts';
import { type Dimension, dimensionOf, dimensionText, isSame } from './dimension.ts';
import { evaluateFormula } from './evaluate-formula.ts';
import { type FormulaParser, longestFormula, parseFormula } from './parse-formula.ts';
import { hasFixedWindows } from './smooth-windows.ts';

/** A channel by formula, kept in the session. `inputs` gives columns without a quantity a name to be used by. */
export const DerivedChannelSchema = z.strictObject({
  name: z.string().min(1).max(100),
  formula: z.string().min(1).max(longestFormula),
  /** What the result is measured in: checked against the formula. */
  kind: z.enum(kinds),
  /** What it stands for, where it should be used as such; null to be plotted only. */
  quantity: z
    .enum(quantityIds as [QuantityId, ...QuantityId[]])
    .nullable()
    .default(null),
  inputs: z
    .array(
      z.strictObject({
        symbol: z.string().regex(/^[A-Za-z][A-Za-z0-9_]{0,40}$/),
        column: z.string().min(1).max(500),
        kind: z.enum(kinds).default('number'),
      }),
    )
    .max(20)
    .default([]),
});
export type DerivedChannel = z.infer<typeof DerivedChannelSchema>;

type Meaning = {
  readonly dimension: Dimension;
  readonly value: number | Float64Array;
  readonly scale?: Scale;
};

function channelMeaning(kind: Kind, value: Float64Array): Meaning {
  const dimension = dimensionOf(kind);
  return kind === 'share' || kind === 'angle' || kind === 'lambda'
    ? { dimension, value, scale: kind }
    : { dimension, value };
}

/**
 * Everything that a formula may name: units by their symbol (`20 kPa`), quantities that the log holds, and the
 * formula's own inputs, the later beating the earlier.
 */
function meanings(log: Log, derived: DerivedChannel): Map<string, Meaning> {
  const found = new Map<string, Meaning>();
  for (const unit of units.values()) {
    // A temperature in C has an offset, which a factor cannot carry; write it in K.
    if (unit.offset !== 0 || !/^[A-Za-z]+$/.test(unit.id)) continue;
    found.set(unit.id, { dimension: dimensionOf(unit.kind), value: unit.factor });
  }
  found.set('pi', { dimension: dimensionOf('number'), value: Math.PI });
  for (const quantity of quantityIds) {
    const channel = channelOf(log, quantity);
    if (!channel) continue;
    found.set(quantity, channelMeaning(kindOf(quantities[quantity]), channel.values));
  }
  found.set('time', { dimension: dimensionOf('time'), value: log.time });
  for (const { symbol, column, kind } of derived.inputs) {
    const channel = log.channels.find((c) => c.column === column);
    if (!channel) continue;
    const own: Kind = channel.quantity ? kindOf(quantities[channel.quantity]) : kind;
    found.set(symbol, channelMeaning(own, channel.values));
  }
  return found;
}

/**
 * A derived channel over a log, SI.
 *
 * Errors: those of parseFormula and checkUnits; log/formula-window; log/formula-result-units where the formula is measured in
 * something else than it claims. Each names the channel as its column.
 */
export function deriveChannel(log: Log, derived: DerivedChannel, parser: FormulaParser): Result<Channel> {
  const where = { file: log.file, column: derived.name };
  const placed = (problems: readonly Problem[]) =>
    fail(...(problems.map((p) => ({ ...p, where })) as [Problem, ...Problem[]]));
  const parsed = parseFormula(derived.formula, parser);
  if (!parsed.ok) return placed(parsed.problems);
  const named = meanings(log, derived);
  const scales = new Map([...named].flatMap(([name, m]) => (m.scale ? [[name, m.scale]] : [])));
  const checked = checkUnits(
    parsed.value,
    new Map([...named].map(([name, m]) => [name, m.dimension])),
    scales,
  );
  if (!checked.ok) return placed(checked.problems);
  const claimed = dimensionOf(derived.kind);
  if (!isSame(checked.value, claimed)) {
    const facts = { found: dimensionText(checked.value), claimed: dimensionText(claimed) };
    return placed([{ code: 'log/formula-result-units', facts }]);
  }
  if (derived.quantity !== null && !isSame(claimed, dimensionOf(kindOf(quantities[derived.quantity])))) {
    const facts = { found: dimensionText(claimed), claimed: derived.quantity };
    return placed([{ code: 'log/formula-result-units', facts }]);
  }
  const symbols = new Map([...named].map(([name, m]) => [name, m.value]));
  if (!hasFixedWindows(parsed.value, symbols)) return placed([{ code: 'log/formula-window', facts: {} }]);
  const values = evaluateFormula(parsed.value, symbols, log.time, log.segments);
  return ok({
    column: derived.name,
    quantity: derived.quantity,
    unit: '',
    confidence: 1,
    reason: { code: 'log/column-by-formula', facts: { formula: derived.formula } },
    values,
    flags: new Uint8Array(values.length),
  });
}

/** A log with its derived channels in order, each able to use those before it; faults stand beside it. */
export function withDerivedChannels(
  log: Log,
  derived: readonly DerivedChannel[],
  parser: FormulaParser,
): { readonly log: Log; readonly problems: readonly Problem[] } {
  let current = log;
  const problems: Problem[] = [];
  for (const one of derived) {
    const channel = deriveChannel(current, one, parser);
    if (channel.ok) current = { ...current, channels: [...current.channels, channel.value] };
    else problems.push(...channel.problems);
  }
  return { log: current, problems };
}
