import { useState } from 'react';
import { Headline } from '../bench/Headline.tsx';
import { Segmented } from '../components/Segmented.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from '../ladder/LadderScreen.module.css';
import { CantYet } from '../plan/CantYet.tsx';
import { type Sheet, useSheet } from '../sheets/use-sheet.ts';
import { DropSheet } from './DropSheet.tsx';
import { HeatTable } from './HeatTable.tsx';
import { type HeatNow, type HeatPlace, heatPlaces, useHeat } from './use-heat.ts';

/** What heats and cools the charge on its way, and whether the drops have the time for it. */
export function HeatScreen() {
  const sheet = useSheet();
  return sheet ? <HeatOf sheet={sheet} /> : null;
}

function HeatOf({ sheet }: { sheet: Sheet }) {
  const { screens, note } = useWords();
  const [place, setPlace] = useState<HeatPlace>('peak');
  const found = useHeat(sheet.doc, place);
  const said = screens.heat;
  if (!found.ok)
    return (
      <main className={styles.main} id="main" tabIndex={-1}>
        <CantYet title={said.cantYet} problems={found.problems} />
      </main>
    );
  const now = found.value;
  // The knock sums' own defaults belong to the ladder, not to the charge.
  const defaults = now.notes.filter(
    (n) => !(n.code === 'charge/practice-default' && ['spark', 'octane', 'lambda'].includes(n.facts.what)),
  );
  return (
    <>
      <main className={styles.main} id="main" tabIndex={-1}>
        <div className={styles.body}>
          <HeatHeadline now={now} />
          <Segmented
            label={said.where}
            options={heatPlaces.map((id) => ({ id, label: said.places[id] }))}
            value={place}
            onChange={setPlace}
          />
          <section>
            <h2>{said.along}</h2>
            <HeatTable now={now} />
          </section>
          <section>
            <h2>{said.remarks}</h2>
            <ul className={styles.remarks}>
              {[...now.wet.notes, ...defaults].map((n) => {
                const text = note(n);
                return <li key={text}>{text}</li>;
              })}
            </ul>
          </section>
        </div>
      </main>
      <DropSheet now={now} />
    </>
  );
}

function HeatHeadline({ now }: { now: HeatNow }) {
  const { screens, show } = useWords();
  const said = screens.heat;
  const { wet, dry, boost, engineSpeed_rad_s } = now;
  const start = said.sentence(show.quantity(boost, 'boost'), show.quantity(engineSpeed_rad_s, 'engineSpeed'));
  const port = (of: HeatNow['wet']) => show.quantity(of.port.air.temperature, 'temperature', 0);
  if (!wet.drops)
    return <Headline parts={[{ text: start }, { text: said.drySentence(port(dry)) }]} second="" />;
  const gain = wet.port.density / dry.port.density - 1;
  const ms = (time: number) => said.milliseconds(show.number(time * 1e3));
  const life = Number.isFinite(wet.drops.lifetime) ? ms(wet.drops.lifetime) : said.forever;
  const second = gain >= 0 ? said.second : said.thinner;
  return (
    <Headline
      parts={[
        { text: start },
        { text: said.withSpray(port(wet)), tone: 'gain' },
        { text: said.without(port(dry)) },
      ]}
      second={second(show.quantity(Math.abs(gain), 'share'), ms(wet.drops.residence), life)}
    />
  );
}
