import { type ReactNode, useDeferredValue, useRef } from 'react';
import { Tabs as AriaTabs, Tab, TabList, TabPanel } from 'react-aria-components';
import { cx } from '../design/cx.ts';
import { SteadyText } from './SteadyText.tsx';
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

/** Less of what was chosen than this in sight, and it is brought up. */
const leastInSight_px = 280;

export function Tabs({ label, parts, selected, onSelect }: TabsProps) {
  const box = useRef<HTMLDivElement>(null);
  // When the tabs come into the page, what they hold follows in slices behind them.
  const isFilled = useDeferredValue(true, false);
  const select = (id: string) => {
    onSelect(id);
    const top = box.current?.getBoundingClientRect().top ?? 0;
    if (window.innerHeight - top < leastInSight_px) box.current?.scrollIntoView({ block: 'start' });
  };
  return (
    <AriaTabs
      ref={box}
      selectedKey={selected}
      onSelectionChange={(key) => select(String(key))}
      className={cx(styles.tabs)}
    >
      <TabList aria-label={label} className={cx(styles.list)}>
        {parts.map((part) => (
          <Tab key={part.id} id={part.id} className={cx(styles.tab)}>
            <SteadyText>{part.title}</SteadyText>
            {part.count !== undefined && <span className={styles.count}>{part.count}</span>}
          </Tab>
        ))}
      </TabList>
      {parts.map((part) => (
        <TabPanel key={part.id} id={part.id} className={cx(styles.panel)}>
          {isFilled && part.content}
        </TabPanel>
      ))}
    </AriaTabs>
  );
}
