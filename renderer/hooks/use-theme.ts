import { useEffect } from 'react';
import type { Preferences } from '../../core/contract/index.ts';

/** Sets day or night on the document; `system` follows the machine while it changes. */
export function useTheme(theme: Preferences['theme']): void {
  useEffect(() => {
    const dark = window.matchMedia('(prefers-color-scheme: dark)');
    const apply = () => {
      const night = theme === 'night' || (theme === 'system' && dark.matches);
      document.documentElement.dataset.theme = night ? 'night' : 'day';
    };
    apply();
    dark.addEventListener('change', apply);
    return () => dark.removeEventListener('change', apply);
  }, [theme]);
}
