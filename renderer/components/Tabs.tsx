import type { ReactNode } from 'react';
import { Tabs as AriaTabs, Tab, TabList, TabPanel } from 'react-aria-components';
import { cx } from '../design/cx.ts';
import styles from './Tabs.module.css';

export type TabPart = {
  readonly id: string;
  readonly title: string;
  /** How many there are, where that helps. */
  readonly count?: number;
  readonly content: ReactNode;
};

export type TabsProps = {
  readonly label: string;
  readonly parts: readonly TabPart[];
  readonly selected: string;
  readonly onSelect: (id: string) => void;
};

export function Tabs({ label, parts, selected, onSelect }: TabsProps) {
  return (
    <AriaTabs
      selectedKey={selected}
      onSelectionChange={(key) => onSelect(String(key))}
      className={cx(styles.tabs)}
    >
      <TabList aria-label={label} className={cx(styles.list)}>
        {parts.map((part) => (
          <Tab key={part.id} id={part.id} className={cx(styles.tab)}>
            {part.title}
            {part.count !== undefined && <span className={styles.count}>{part.count}</span>}
          </Tab>
        ))}
      </TabList>
      {parts.map((part) => (
        <TabPanel key={part.id} id={part.id} className={cx(styles.panel)}>
          {part.content}
        </TabPanel>
      ))}
    </AriaTabs>
  );
}
