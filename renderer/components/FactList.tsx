import type { ReactNode } from 'react';
import styles from './FactList.module.css';

export type Fact = { readonly name: string; readonly value: ReactNode; readonly small?: string };

/** Names and numbers, one hairline each. */
export function FactList({ facts }: { facts: readonly Fact[] }) {
  return (
    <dl className={styles.list}>
      {facts.map((fact) => (
        <div key={fact.name} className={styles.fact}>
          <dt>{fact.name}</dt>
          <dd>{fact.value}</dd>
          {fact.small && <dd className={styles.small}>{fact.small}</dd>}
        </div>
      ))}
    </dl>
  );
}
