import { Menu as MenuIcon } from 'lucide-react';
import type { Action } from '../app/actions.ts';
import { Menu, type MenuChoice } from '../components/Menu.tsx';
import { usePreferences } from '../hooks/use-preferences.tsx';
import { useWords } from '../hooks/use-words.tsx';

const sessionPart = [
  ...['import', 'import-path', 'watch', 'watch-stop', 'lean', 'history'],
  ...['new', 'open', 'unpack', 'pack', 'merge', 'close'],
];
const helpPart = ['palette', 'keys', 'units'];

/** The menu at the right of the bar: the session, the window, light and language. */
export function MainMenu({ actions }: { actions: readonly Action[] }) {
  const { screens } = useWords();
  const { preferences, set } = usePreferences();
  const said = screens.shell;
  const of = (ids: readonly string[]) =>
    ids.flatMap((id): MenuChoice[] => {
      const action = actions.find((a) => a.id === id);
      if (!action) return [];
      return [
        {
          id,
          label: action.title,
          keys: action.keys ?? undefined,
          isDisabled: !action.isEnabled,
          run: action.run,
        },
      ];
    });
  const themes = (['system', 'day', 'night'] as const).map((theme) => ({
    id: `theme-${theme}`,
    label: said.themes[theme],
    isChosen: preferences.theme === theme,
    run: () => set({ theme }),
  }));
  const languages = (['en', 'de'] as const).map((language) => ({
    id: `language-${language}`,
    label: said.languages[language],
    isChosen: preferences.language === language,
    run: () => set({ language }),
  }));
  return (
    <Menu
      label={said.menu}
      trigger={<MenuIcon aria-hidden />}
      parts={[
        { title: '', choices: of(sessionPart) },
        { title: '', choices: of(helpPart) },
        { title: said.theme, choices: themes, isRow: true },
        { title: said.language, choices: languages, isRow: true },
      ]}
    />
  );
}
