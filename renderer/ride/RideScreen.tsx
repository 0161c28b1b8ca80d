import { useEffect, useMemo, useRef } from 'react';
import type { Snapshot } from '../../core/contract/index.ts';
import { entryTitle } from '../../core/words/index.ts';
import { useDialog, useShow } from '../app/view.tsx';
import { pullsOf } from '../bench/PullsTable.tsx';
import { useAnswer } from '../hooks/use-answer.ts';
import { useLedger } from '../hooks/use-ledger.ts';
import { useWords } from '../hooks/use-words.tsx';
import { useLadder } from '../ladder/use-ladder.ts';
import { splitSentence } from '../now/split-sentence.ts';
import { stepWords } from '../now/step-words.ts';
import { whatNow } from '../now/what-now.ts';
import { sheetDocOf } from '../sheets/sheet-doc.ts';
import { useWatch } from '../watch/use-watch.tsx';
import { followedWords } from './followed-words.ts';
import { gateValue } from './gate-words.ts';
import { RideAmount } from './RideAmount.tsx';
import { RideFoot } from './RideFoot.tsx';
import { RideGates } from './RideGates.tsx';
import { RideHead } from './RideHead.tsx';
import styles from './RideScreen.module.css';
import { lastPullWords, rideEffect } from './ride-effect.ts';
import { useFullScreen } from './use-full-screen.ts';
import { useMarks } from './use-marks.ts';
import { useRideKeys } from './use-ride-keys.ts';
import { useWakeLock } from './use-wake-lock.ts';
import { useWakes } from './use-wakes.ts';

/** The passenger's view: one effect, the gates, one next step, three keys. It follows the newest driven entry. */
export function RideScreen({ snapshot }: { snapshot: Snapshot }) {
  const words = useWords();
  const { screens, show, note } = words;
  const showView = useShow();
  const { watch } = useWatch();
  const main = useRef<HTMLElement>(null);
  const said = screens.ride;
  const { ledger } = snapshot.session;
  const entry = ledger.findLast((e) => e.runs.length > 0) ?? ledger[0] ?? null;
  const lines = useLedger();
  const line = lines.value?.lines.find((l) => l.entryId === entry?.id) ?? null;
  const answer = useAnswer(
    'entries.gates',
    entry && { entryId: entry.id },
    snapshot.revision,
    entry?.id ?? '',
  );
  const gates = answer.value?.gates ?? null;
  const last = (entry && pullsOf(snapshot, entry).at(-1)?.pull) ?? null;
  const marks = useMarks(last);
  const leave = () => showView({ screen: 'bench' });
  useRideKeys({ mark: marks.mark, undo: marks.undo, leave }, useDialog() !== null);
  useEffect(() => main.current?.focus(), []);
  const isWindowed = useFullScreen(leave);
  const mayGoDark = useWakeLock();

  const effect = entry && line && rideEffect(entry, line, { show, said, note });
  const pulls = snapshot.runs.reduce((n, run) => n + run.pulls.length, 0);
  const entryId = entry?.id ?? null;
  const isSettled = !lines.isBusy && !answer.isBusy;
  const seen = useMemo(
    () => (entryId && gates && isSettled ? { entryId, pulls, gates } : null),
    [entryId, gates, pulls, isSettled],
  );
  const aloud = useWakes(seen, ({ cue, gate }) => {
    if (!gate) return said.newPull(effect ? `${effect.word}. ${effect.progress}.` : '');
    const value = gateValue(gate, show, said);
    return cue === 'fluid' ? said.fluidLow(value) : said.gateClosed(said.gate[gate.quantity], value);
  });

  const { session } = snapshot;
  const doc = useMemo(() => sheetDocOf(session), [session]);
  const ladder = useLadder(doc, session.conditions.place === 'dyno' ? 'dyno' : 'street');
  // Without a setup there is no ladder: what the ledger alone can say.
  const step = ladder && !ladder.ok ? whatNow(snapshot, lines.value) : null;
  const trouble = [
    watch ? '' : said.notWatched,
    isWindowed ? said.noFullScreen : '',
    mayGoDark ? said.mayGoDark : '',
    aloud.isMute ? said.noSound : '',
  ].filter((t) => t !== '');
  const closed = gates?.find((g) => g.state === 'closed');
  const next = closed
    ? said.closed(said.gate[closed.quantity], closed.ifClosed)
    : ladder?.ok
      ? splitSentence(note(ladder.value.next.now)).title
      : step && stepWords(step, (e) => entryTitle(e, show), screens.now).title;
  return (
    <main ref={main} className={styles.ride} id="main" tabIndex={-1} aria-label={said.label}>
      <RideHead
        title={entry ? `${ledger.indexOf(entry)}  ${entryTitle(entry, show)}` : snapshot.session.name}
        progress={effect?.progress ?? ''}
        onDone={() => main.current?.focus()}
      />
      <div className={styles.middle}>
        {effect ? (
          <RideAmount
            effect={effect}
            last={marks.message || followedWords(watch, words) || lastPullWords(last, said, note)}
            trouble={trouble.join(' ')}
          />
        ) : (
          <p className={styles.busy}>{screens.shell.loading}</p>
        )}
        {gates && <RideGates gates={gates} />}
      </div>
      <RideFoot
        next={next ? said.next(next) : ''}
        isStop={closed !== undefined}
        marks={marks}
        onLeave={leave}
      />
      <p className="visually-hidden" role="status" aria-live="assertive">
        {aloud.said}
      </p>
    </main>
  );
}
