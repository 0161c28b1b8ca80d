import type { ReactNode } from 'react';
import { Menu as AriaMenu, Header, MenuItem, MenuSection, MenuTrigger, Popover } from 'react-aria-components';
import { cx } from '../design/cx.ts';
import { Keys } from './Keys.tsx';
import styles from './Menu.module.css';
import { TriggerButton } from './TriggerButton.tsx';

export type MenuChoice = {
  readonly id: string;
  readonly label: string;
  readonly keys?: string | undefined;
  readonly isDisabled?: boolean;
  readonly isChosen?: boolean;
  readonly run: () => void;
};

export type MenuPart = {
  readonly title: string;
  readonly choices: readonly MenuChoice[];
  /** One of a few short ones: side by side below the title. */
  readonly isRow?: boolean;
};

export type MenuProps = {
  /** Read to whoever can't see the trigger. */
  readonly label: string;
  readonly trigger: ReactNode;
  readonly parts: readonly MenuPart[];
};

export function Menu({ label, trigger, parts }: MenuProps) {
  const run = (id: string) =>
    parts
      .flatMap((p) => p.choices)
      .find((c) => c.id === id)
      ?.run();
  return (
    <MenuTrigger>
      <TriggerButton look="icon" aria-label={label}>
        {trigger}
      </TriggerButton>
      <Popover className={cx(styles.popover)} placement="bottom end">
        <AriaMenu
          aria-label={label}
          onAction={(id) => run(String(id))}
          disabledKeys={parts.flatMap((p) => p.choices.filter((c) => c.isDisabled).map((c) => c.id))}
          className={cx(styles.menu)}
        >
          {parts.map((part) => (
            <MenuSection
              key={part.title || part.choices[0]?.id}
              aria-label={part.title || label}
              className={cx(styles.section, part.isRow && styles.row)}
            >
              {part.title && <Header className={cx(styles.header)}>{part.title}</Header>}
              {part.choices.map((choice) => (
                <MenuItem key={choice.id} id={choice.id} textValue={choice.label} className={cx(styles.item)}>
                  <span className={cx(choice.isChosen && styles.chosen)}>{choice.label}</span>
                  {choice.keys && <Keys keys={choice.keys} />}
                </MenuItem>
              ))}
            </MenuSection>
          ))}
        </AriaMenu>
      </Popover>
    </MenuTrigger>
  );
}
