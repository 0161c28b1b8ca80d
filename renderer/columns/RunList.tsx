import { useEffect, useRef } from 'react';
import type { Snapshot } from '../../core/contract/index.ts';
import { type Entry, type RunDirection, RunDirectionSchema } from '../../core/session/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { ListGap } from '../components/ListGap.tsx';
import { Select } from '../components/Select.tsx';
import { useAhead } from '../hooks/use-ahead.ts';
import { useLongList } from '../hooks/use-long-list.ts';
import { useSession } from '../hooks/use-session.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './RunList.module.css';

export type RunListProps = { readonly snapshot: Snapshot; readonly entries: readonly Entry[] };

type Way = { readonly runId: string; readonly direction: RunDirection | null };

const withWay = (runs: Snapshot['runs'], { runId, direction }: Way): Snapshot['runs'] =>
  runs.map((run) => (run.record.id === runId ? { ...run, record: { ...run.record, direction } } : run));

/** The logs behind the pulls, each with the way to its columns. */
export function RunList({ snapshot, entries }: RunListProps) {
  const { screens } = useWords();
  const show = useShow();
  const { edit } = useSession();
  const said = screens.columns;
  const { move } = screens.importing;
  // On a dyno the car goes nowhere.
  const isOnRoad = snapshot.session.conditions.place !== 'dyno';
  const ways = (['unsaid', ...RunDirectionSchema.options] as const).map((id) => ({
    id,
    label: said.ways[id],
  }));
  const [all, putWay] = useAhead(snapshot.runs, withWay);
  const setWay = (runId: string, direction: RunDirection | null) =>
    void putWay({ runId, direction }, () => edit({ type: 'run.set', runId, patch: { direction } }));
  const ids = new Set(entries.flatMap((e) => e.runs.map((r) => r.runId)));
  const runs = all.filter((r) => ids.has(r.record.id));
  const long = useLongList<HTMLUListElement>({ count: runs.length, rowHeight_px: isOnRoad ? 45 : 41 });
  const section = useRef<HTMLElement>(null);
  const focusedRow = useRef(0);
  const count = useRef(runs.length);
  // The row of a log that was moved leaves with the focus: what took its place has it then, else the last one.
  useEffect(() => {
    const isFewer = runs.length < count.current;
    count.current = runs.length;
    if (!isFewer || document.activeElement !== document.body) return;
    const rows = [...(section.current?.querySelectorAll('li') ?? [])];
    rows[Math.min(focusedRow.current, rows.length - 1)]?.querySelector('button')?.focus();
  }, [runs.length]);
  if (runs.length === 0) return null;
  return (
    <section ref={section} className={styles.runs}>
      <h2 className={styles.title}>{said.logs}</h2>
      <ul {...long.listProps}>
        {long.parts.map((part) => {
          const record = runs[part.index]?.record;
          if (part.kind === 'gap') return <ListGap key={`gap-${part.index}`} height_px={part.height_px} />;
          if (!record) return null;
          return (
            <li
              key={record.id}
              className={styles.run}
              onFocus={() => {
                focusedRow.current = part.index;
              }}
              {...long.rowProps(part.index)}
              {...long.placeProps(part.index)}
            >
              <span className={styles.name}>{record.name}</span>
              {isOnRoad && (
                <div className={styles.way}>
                  <Select
                    label={said.wayOf(record.name)}
                    isLabelHidden
                    options={ways}
                    value={record.direction ?? 'unsaid'}
                    onChange={(way) => setWay(record.id, way === 'unsaid' ? null : way)}
                  />
                </div>
              )}
              <Button
                look="plain"
                aria-label={move.openOf(record.name)}
                onPress={() => show({ dialog: { type: 'move-logs', runId: record.id } })}
              >
                {move.open}
              </Button>
              <Button
                look="plain"
                aria-label={said.openOf(record.name)}
                onPress={() => show({ dialog: { type: 'columns', runId: record.id } })}
              >
                {said.open}
              </Button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
