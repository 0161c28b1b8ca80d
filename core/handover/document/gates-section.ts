import { screenWords } from '../../words/index.ts';
import { type DayGate, dayGates } from '../facts/index.ts';
import type { Block, Cell, Section } from './handover-document.ts';
import { mixtureDigits, type Teller } from './teller.ts';

/** Digits that a limit is set by: whole degrees, whole percent. */
const digits: Readonly<Record<string, number>> = {
  number: 0,
  temperature: 0,
  share: 0,
  pressure: 0,
  fluidPressure: 1,
};

/** Every stop rule with its limit, the car as left, and the closest approach of the day. */
export function gatesSection(teller: Teller): Section {
  const { source, show, words } = teller;
  const gates = dayGates(source);
  const names = screenWords(show.language).ladder.gates;
  if (gates.length === 0)
    return { id: 'gates', title: words.gates, blocks: [{ kind: 'text', text: words.gatesNone }] };
  const level = (gate: DayGate, value: number) =>
    show.quantity(value, gate.kind, gate.kind === 'lambda' ? mixtureDigits(show) : digits[gate.kind]);
  const lastCell = (gate: DayGate): Cell => {
    const measured = gate.last?.measured ?? null;
    if (measured === null || !gate.last) return { text: words.notMeasured };
    const state = gate.last.state === 'near' || gate.last.state === 'closed' ? gate.last.state : null;
    return {
      text: level(gate, measured),
      ...(state ? { more: [words.gateStates[state]], tone: state === 'closed' ? 'loss' : 'doubt' } : {}),
    };
  };
  const rows = gates.map((gate) => {
    const closest = gate.closest;
    const share = closest?.gate.closeness ?? null;
    return {
      cells: [
        { text: names[gate.quantity] },
        { text: (gate.isLowest ? words.atLeast : words.below)(level(gate, gate.limit)) },
        lastCell(gate),
        closest?.gate.measured != null
          ? { text: level(gate, closest.gate.measured) }
          : { text: words.unwatched },
        { text: closest ? `${closest.entry}` : '–' },
        { text: share === null || !Number.isFinite(share) ? '–' : show.quantity(share, 'share', 0) },
      ],
    };
  });
  const closed = gates.filter((g) => g.last?.state === 'closed').map((g) => names[g.quantity]);
  const blocks: Block[] = [
    { kind: 'text', text: words.gatesLead, look: 'small' },
    {
      kind: 'table',
      caption: words.gates,
      columns: [
        { title: words.gate },
        { title: words.limit, isFigure: true },
        { title: words.last, isFigure: true },
        { title: words.closest, isFigure: true },
        { title: words.inChange, isFigure: true, width: 'small' },
        { title: words.ofTheWay, isFigure: true, width: 'small' },
      ],
      rows,
      scale: null,
    },
  ];
  if (closed.length > 0)
    blocks.push({ kind: 'text', text: words.gatesClosed(closed.join(', ')), look: 'warn' });
  return { id: 'gates', title: words.gates, blocks, isKeptWhole: true };
}
