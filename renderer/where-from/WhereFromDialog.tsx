import { useEffect, useRef } from 'react';
import { Button } from '../components/Button.tsx';
import { Dialog } from '../components/Dialog.tsx';
import table from '../components/Table.module.css';
import { cx } from '../design/cx.ts';
import { useToasts } from '../hooks/use-toasts.tsx';
import { useWords } from '../hooks/use-words.tsx';
import { type Origin, originText } from './origin.ts';
import styles from './WhereFromDialog.module.css';

/** Formula, what was put in, source, and where it holds: from the data that stands beside the function. */
export function WhereFromDialog({ origin, onClose }: { origin: Origin; onClose: () => void }) {
  const { screens, show } = useWords();
  const { say } = useToasts();
  const said = screens.whereFrom;
  const copy = async () => {
    await navigator.clipboard.writeText(originText(origin, show));
    say(said.copied);
  };
  return (
    <Dialog title={said.title} onClose={onClose} actions={<Button onPress={copy}>{said.copy}</Button>}>
      <Formula origin={origin} />
      <table className={table.table}>
        <caption className="visually-hidden">{said.inputs}</caption>
        <tbody>
          {origin.inputs.map((input) => (
            <tr key={input.symbol}>
              <th scope="row">{input.symbol}</th>
              <td>{input.text}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <dl className={styles.facts}>
        <dt>{said.source}</dt>
        <dd>{origin.source}</dd>
        {origin.valid.length > 0 && (
          <>
            <dt>{said.valid}</dt>
            {origin.valid.map((text) => (
              <dd key={text}>{text}</dd>
            ))}
          </>
        )}
      </dl>
    </Dialog>
  );
}

/** Typeset where the formula has a form for it; the typesetter is fetched when the first one is shown. */
function Formula({ origin }: { origin: Origin }) {
  const place = useRef<HTMLDivElement>(null);
  const { tex, formula } = origin;
  useEffect(() => {
    const root = place.current;
    if (!root || tex === null) return;
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
      {tex !== null && <div ref={place} />}
      <code className={cx(tex === null && styles.alone)}>{formula}</code>
    </div>
  );
}
