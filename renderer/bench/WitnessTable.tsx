import { useState } from 'react';
import { explainVerdict } from '../../core/compare/index.ts';
import type { VerdictWire } from '../../core/contract/index.ts';
import { Button } from '../components/Button.tsx';
import table from '../components/Table.module.css';
import { useWords } from '../hooks/use-words.tsx';
import { AskedHead } from '../where-from/AskedHead.tsx';
import { originOfCard } from '../where-from/origin.ts';
import { WitnessRow } from './WitnessRow.tsx';
import styles from './WitnessTable.module.css';
import { orderWitnesses } from './witness-order.ts';

type Witness = VerdictWire['witnesses'][number];

/** What the other channels say: whether the declared change happened, and whether anything else moved. */
export function WitnessTable({ witnesses }: { witnesses: readonly Witness[] }) {
  const { screens, show } = useWords();
  const said = screens.bench;
  const [isAll, setAll] = useState(false);
  const { shown, rest } = orderWitnesses(witnesses);
  if (witnesses.length === 0) return <p className={styles.none}>{said.noWitnesses}</p>;
  return (
    <>
      <table className={table.table}>
        <thead>
          <tr>
            <th scope="col">{said.witness}</th>
            <th scope="col" className={table.number}>
              {said.before}
            </th>
            <th scope="col" className={table.number}>
              {said.after}
            </th>
            <th scope="col" className={table.number}>
              <AskedHead title={said.difference} origin={originOfCard(explainVerdict.witnesses, show)} />
            </th>
            <th scope="col" />
          </tr>
        </thead>
        <tbody>
          {(isAll ? [...shown, ...rest] : shown).map((w) => (
            <WitnessRow key={w.quantity} witness={w} />
          ))}
        </tbody>
      </table>
      {rest.length > 0 && (
        <div className={styles.more}>
          <Button look="plain" onPress={() => setAll(!isAll)}>
            {isAll ? said.fewer : said.moreSteady(rest.length)}
          </Button>
        </div>
      )}
    </>
  );
}
