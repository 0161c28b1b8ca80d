import { type ReactNode, useMemo, useRef, useState } from 'react';
import type { Session, SessionTable } from '../../core/session/index.ts';
import { cellsIn, maskOf, placeOf, setCells, writeTable } from '../../core/tables/index.ts';
import { entryTitle, readNumber } from '../../core/words/index.ts';
import { Headline } from '../bench/Headline.tsx';
import { Check } from '../components/Check.tsx';
import { Segmented } from '../components/Segmented.tsx';
import { Select } from '../components/Select.tsx';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import screen from '../ladder/LadderScreen.module.css';
import { cellText, loadSymbol, symbolOf, withUnit } from './cell-text.ts';
import { heatOfDifference, heatOfValue } from './heat-share.ts';
import { remarksOfNudge } from './held-remarks.ts';
import { Readout } from './Readout.tsx';
import { StepPanel } from './StepPanel.tsx';
import { useStepQuestion } from './step-question.ts';
import { TableGrid } from './TableGrid.tsx';
import styles from './Tables.module.css';
import { type GridState, useGrid } from './use-grid.ts';
import { useNudge } from './use-nudge.ts';
import { type TableNow, useTrace } from './use-table.ts';

const views = ['now', 'before', 'difference'] as const;
export type TableView = (typeof views)[number];

/** What a person changes in a table. */
export type TablePatch = Partial<Pick<SessionTable, 'now' | 'limit'>>;

export type TableBodyProps = {
  readonly session: Session;
  readonly now: TableNow;
  readonly head: ReactNode;
  /** Shows a change at once and keeps it; resolves when it is kept. Those with one `joinKey` in a row are one step of undo. */
  readonly onKeep: (patch: TablePatch, joinKey?: string) => Promise<boolean>;
};

const allKept = 'all';

/** The last step that was kept, the table that it made, and where the grid stood. */
type Kept = {
  readonly cells: number;
  readonly text: string;
  readonly at: Pick<GridState, 'cursor' | 'chosen'>;
  readonly press: number;
};

/** One table: the sentence, the heat map with the pulls over it, and at the right what is done with it. */
export function TableBody({ session, now: of, head, onKeep }: TableBodyProps) {
  const words = useWords();
  const { screens, show } = words;
  const { report } = useToasts();
  const said = screens.tables;
  const { table, now, before, changes, ambientPressure, limit } = of;
  const driven = session.ledger.filter((e) => e.runs.length > 0 && e.state === 'kept');
  const [view, setView] = useState<TableView>('now');
  const [isWhole, setWhole] = useState(false);
  const [traceId, setTraceId] = useState(() => driven.at(-1)?.id ?? '');
  const [typing, setTyping] = useState<string | null>(null);
  const [kept, setKept] = useState<Kept | null>(null);
  const presses = useRef(0);
  const grid = useGrid(now);
  const question = useStepQuestion(table);
  const { told, held: heldByKey, nudge: stepByKey } = useNudge(of, grid);
  const traces = useTrace(traceId === allKept ? driven.map((e) => e.id) : traceId === '' ? [] : [traceId]);
  const paths = useMemo(
    () => traces.map((states) => states.map((s) => placeOf(now, table.axes, s, ambientPressure))),
    [traces, now, table.axes, ambientPressure],
  );
  const shown = view === 'before' ? before : now;
  const delta = useMemo(
    () =>
      now.values.map((line, r) =>
        line.map((v, c) => Number((v - (before.values[r]?.[c] ?? v)).toFixed(now.decimals)) + 0),
      ),
    [now, before],
  );
  const texts = useMemo(
    () =>
      view === 'difference'
        ? delta.map((line) => line.map((d) => (d === 0 ? '·' : show.signed(d, now.decimals))))
        : shown.values.map((line) => line.map((v) => cellText(v, shown, show))),
    [view, delta, shown, now.decimals, show],
  );
  const heat = useMemo(() => {
    if (view === 'difference') {
      const most = delta.flat().reduce((m, d) => Math.max(m, Math.abs(d)), 0);
      return (r: number, c: number) => heatOfDifference(delta[r]?.[c] ?? 0, most);
    }
    // One scale for now and before, so that a glance from one to the other compares.
    const all = [...now.values.flat(), ...before.values.flat()];
    const [low, high] = [Math.min(...all), Math.max(...all)];
    return (r: number, c: number) => heatOfValue(shown.values[r]?.[c] ?? low, low, high);
  }, [view, delta, now, before, shown]);

  const target = cellsIn(grid.chosen) > 0 ? grid.chosen : null;
  const orCursor = () => target ?? maskOf(now, (r, c) => r === grid.cursor.row && c === grid.cursor.column);
  // Told over the grid: at the foot of the window it hid the lowest rows, where boost is stepped.
  const put = async (text: string, cells: number) => {
    const press = ++presses.current;
    setKept(null);
    if (text === table.now || !(await onKeep({ now: text }))) return;
    // What is told is of the last press, also where an earlier one is answered after it.
    if (press === presses.current) setKept({ cells, text, at: grid, press });
  };
  const nudge = (sign: 1 | -1, isRepeat: boolean) => {
    const { step, neighbours } = question;
    const stepped = stepByKey(sign, isRepeat, { covered: orCursor(), step: step ?? 0, neighbours });
    // A key that is held down fails once.
    if (!stepped.ok) return isRepeat || report(stepped.problems);
    void put(writeTable(stepped.value.table), stepped.value.changes.length);
  };
  const enter = (text: string) => {
    const value = readNumber(text, show.language);
    setTyping(null);
    if (value === null) return report([{ code: 'tables/cell-not-number', facts: { text } }]);
    const set = setCells(now, orCursor(), value, limit === null ? null : { value: limit, unit: table.unit });
    if (!set.ok) return report(set.problems);
    void put(writeTable(set.value), cellsIn(orCursor()));
  };
  const isKeptHere =
    kept?.text === table.now && kept.at.cursor === grid.cursor && kept.at.chosen === grid.chosen;
  const cell = { row: grid.cursor.row, column: grid.cursor.column };
  const value = now.values[cell.row]?.[cell.column] ?? Number.NaN;
  const old = before.values[cell.row]?.[cell.column] ?? value;
  const load = said.loads[table.axes.load.kind](loadSymbol(table.axes.load, show));
  const speed = said.engineSpeed(show.symbol('rpm', 'engineSpeed'));
  const axisNames = table.axes.engineSpeed === 'across' ? ([speed, load] as const) : ([load, speed] as const);
  const heldMask = useMemo(() => {
    const held = question.heldOf(of, grid.chosen);
    return held.length > 0 ? maskOf(now, (r, c) => held.some((h) => h.row === r && h.column === c)) : null;
  }, [question, of, grid.chosen, now]);
  return (
    <>
      <main className={screen.main} id="main" tabIndex={-1}>
        <div className={styles.body}>
          {head}
          <Headline
            parts={[
              { text: said.headline(table.name, now.down.length, now.across.length) },
              changes.length > 0
                ? { text: said.changed(changes.length), tone: 'undecided' as const }
                : { text: said.unchanged },
            ]}
            second={said.axes(axisNames[0], axisNames[1], symbolOf(table, show))}
          />
          <div className={styles.bar}>
            <Segmented
              label={said.view}
              isLabelHidden
              options={views.map((id) => ({ id, label: said.views[id] }))}
              value={view}
              onChange={setView}
            />
            <Select
              label={said.trace}
              isLabelHidden
              options={[
                { id: '', label: said.noTrace },
                ...(driven.length > 1 ? [{ id: allKept, label: said.allPulls }] : []),
                ...driven.map((e) => ({
                  id: e.id,
                  label: `${session.ledger.indexOf(e)} · ${entryTitle(e, show)}`,
                })),
              ]}
              value={traceId}
              onChange={setTraceId}
            />
            <Check label={said.whole} isSelected={isWhole} onChange={setWhole} />
          </div>
          <div className={styles.grid}>
            <Readout
              table={table}
              now={now}
              cell={cell}
              value={withUnit(cellText(value, now, show), symbolOf(table, show))}
              was={old === value ? null : withUnit(cellText(old, now, show), symbolOf(table, show))}
              typing={typing}
              onTyping={setTyping}
              onEnter={enter}
              pulls={paths.length}
              isDifference={view === 'difference'}
            />
            <div className={styles.told} role="status">
              {isKeptHere && <p key={kept.press}>{said.stepped(kept.cells)}</p>}
              {told &&
                remarksOfNudge(told.stepped, of, words).map((text) => (
                  <p key={`${told.press} ${text}`}>{text}</p>
                ))}
            </div>
            <TableGrid
              name={table.name}
              table={shown}
              axes={table.axes}
              texts={texts}
              heat={heat}
              cursor={grid.cursor}
              chosen={grid.chosen}
              held={heldByKey ?? heldMask}
              paths={paths}
              isWhole={isWhole}
              onAction={(action) => {
                if (grid.act(action)) return;
                if (action.type === 'nudge') nudge(action.sign, action.isRepeat);
                if (action.type === 'type') setTyping(action.text);
              }}
              onPoint={grid.point}
            />
          </div>
        </div>
      </main>
      <StepPanel
        session={session}
        of={of}
        chosen={grid.chosen}
        onChoose={grid.choose}
        traces={traces}
        question={question}
        onStep={put}
        onLimit={(limit) => void onKeep({ limit }, `${table.id} limit`)}
      />
    </>
  );
}
