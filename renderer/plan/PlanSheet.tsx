import { fitOf, type Plan, type Setup } from '../../core/injection/index.ts';
import { wordsOf } from '../../core/words/index.ts';
import { useShow } from '../app/view.tsx';
import { Button } from '../components/Button.tsx';
import { Caution } from '../components/Caution.tsx';
import { SideSheet } from '../components/SideSheet.tsx';
import { useWords } from '../hooks/use-words.tsx';
import styles from './PlanSheet.module.css';

/** Rows of the list before it is too long to be read; the rest is counted. */
const most = 5;

/** What to fix before driving, with the caution that belongs to it. */
export function PlanSheet({ setup, plan }: { setup: Setup; plan: Plan | null }) {
  const { screens, show } = useWords();
  const showView = useShow();
  const said = screens.plan;
  const fit = screens.setup.fit;
  const review = fitOf(setup);
  const rules = wordsOf(show.language).fitRules;
  const open = review.beforeDriving;
  const hasBucket = setup.fluidSystem.bucket.points.length > 0;
  return (
    <SideSheet
      label={screens.now.title}
      kicker={screens.now.title}
      title={open.length > 0 ? said.fixFirst : said.fixNone}
      why={open.length > 0 ? said.fixWhy : said.ready}
    >
      <ul className={styles.list}>
        {open.slice(0, most).map((item) => (
          <li key={item.id}>
            {rules[item.id].question} <strong className={styles[item.state]}>{fit.states[item.state]}</strong>
          </li>
        ))}
      </ul>
      {open.length > most && <p>{fit.open(open.length)}</p>}
      <Caution>{screens.setup.caution.methanol}</Caution>
      <Button look="main" isWide onPress={() => showView({ screen: 'setup', section: 'fit' })}>
        {said.answer}
      </Button>
      <Button isWide onPress={() => showView({ screen: 'setup', section: 'fluid' })}>
        {said.bucket}
      </Button>
      {plan && <p>{hasBucket ? said.proven : said.unproven}</p>}
    </SideSheet>
  );
}
