import { useDeferredValue, useRef } from 'react';
import { useShow, useView } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { SheetNav } from '../components/SheetNav.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { usePlan } from '../plan/use-plan.ts';
import { FieldProblems } from '../sheets/FieldProblems.tsx';
import type { SectionId } from '../sheets/field-specs.ts';
import { type Sheet, useSheet } from '../sheets/use-sheet.ts';
import { Follows } from './Follows.tsx';
import styles from './SetupScreen.module.css';
import { SetupSection } from './SetupSection.tsx';

const order: readonly SectionId[] = ['car', 'air', 'limits', 'engine', 'targets', 'fluid', 'fit'];

/** The car and everything on it, a section at a time; what follows from the numbers stands beside them. */
export function SetupScreen() {
  const sheet = useSheet();
  return sheet ? <SetupOf sheet={sheet} /> : null;
}

function SetupOf({ sheet }: { sheet: Sheet }) {
  const { screens } = useWords();
  const view = useView();
  const show = useShow();
  // The field shows what is typed at once; what follows from it may come a frame later.
  const settled = useDeferredValue(sheet.doc);
  const { plan } = usePlan(settled);
  const said = screens.setup;
  const section = order.find((s) => s === view.section) ?? 'car';
  const next = order[order.indexOf(section) + 1];
  const main = useRef<HTMLElement>(null);
  const open = (id: SectionId) => {
    show({ section: id });
    main.current?.focus();
    main.current?.scrollTo({ top: 0 });
  };
  return (
    <FieldProblems of={plan}>
      <SheetNav
        title={said.title}
        sheets={order.map((id) => ({ id, title: said.sections[id] }))}
        here={section}
        onOpen={(id) => show({ section: id })}
        isAlone
      />
      <main ref={main} className={styles.main} id="main" tabIndex={-1}>
        <h1>{said.sections[section]}</h1>
        <p className={styles.lead}>{said.leads[section]}</p>
        <SetupSection key={section} section={section} sheet={sheet} />
        <div className={styles.onward}>
          {next ? (
            <Button onPress={() => open(next)}>{said.onward(said.sections[next])}</Button>
          ) : (
            <Button onPress={() => show({ screen: 'plan' })}>{said.toPlan}</Button>
          )}
        </div>
      </main>
      <Follows section={section} doc={settled} plan={plan} />
    </FieldProblems>
  );
}
