import { useEffect, useRef } from 'react';
import type { Explanation } from '../../core/units/index.ts';
import { Button } from '../components/Button.tsx';
import { Dialog } from '../components/Dialog.tsx';
import table from '../components/Table.module.css';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { explanationText } from './explanation-text.ts';
import styles from './WhereFromDialog.module.css';

/** Formula, what was put in, source, and where it holds: from the data that stands beside the function. */
export function WhereFromDialog({ explanation, onClose }: { explanation: Explanation; onClose: () => void }) {
  const { screens, show } = useWords();
  const { say } = useToasts();
  const said = screens.whereFrom;
  const copy = async () => {
    await navigator.clipboard.writeText(explanationText(explanation, show));
    say(said.copied);
  };
  return (
    <Dialog title={said.title} isOpen onClose={onClose} actions={<Button onPress={copy}>{said.copy}</Button>}>
      <Formula explanation={explanation} />
      <table className={table.table}>
        <thead>
          <tr>
            <th scope="col">{said.inputs}</th>
            <th scope="col" />
          </tr>
        </thead>
        <tbody>
          {explanation.inputs.map((input) => (
            <tr key={input.symbol}>
              <th scope="row">{input.symbol}</th>
              <td className={table.number}>{show.quantity(input.value, input.kind)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <dl className={styles.facts}>
        <dt>{said.source}</dt>
        <dd>{explanation.source}</dd>
        {explanation.validRange.length > 0 && (
          <>
            <dt>{said.valid}</dt>
            {explanation.validRange.map((r) => (
              <dd key={r.symbol}>
                {said.from(r.symbol, show.quantity(r.from, r.kind), show.quantity(r.to, r.kind))}
              </dd>
            ))}
          </>
        )}
      </dl>
    </Dialog>
  );
}

/** Typeset where the formula has a form for it; the typesetter is fetched when the first one is shown. */
function Formula({ explanation }: { explanation: Explanation }) {
  const place = useRef<HTMLDivElement>(null);
  const { tex, formula } = explanation;
  useEffect(() => {
    const root = place.current;
    if (!root || tex === undefined) return;
    let isCurrent = true;
    import('temml').then(({ default: temml }) => {
      if (isCurrent) temml.render(tex, root, { displayMode: true });
    });
    return () => {
      isCurrent = false;
    };
  }, [tex]);
  return (
    <div className={styles.formula}>
      <div ref={place} aria-hidden={tex === undefined} />
      <code>{formula}</code>
    </div>
  );
}
