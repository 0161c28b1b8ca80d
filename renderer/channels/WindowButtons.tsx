import { ChevronLeft, ChevronRight, ZoomIn, ZoomOut } from 'lucide-react';
import { Group } from 'react-aria-components';
import { type PlotWindow, panned, zoomed } from '../chart/plot-window.ts';
import { Button } from '../components/Button.tsx';
import { cx } from '../design/cx.ts';
import { useWords } from '../hooks/use-words.tsx';
import styles from './ChannelsTab.module.css';

export type WindowButtonsProps = {
  readonly seen: PlotWindow;
  readonly whole: PlotWindow;
  readonly isAll: boolean;
  readonly onWindow: (window: PlotWindow | null) => void;
};

/** What keys and pointer do to the window, as buttons. */
export function WindowButtons({ seen, whole, isAll, onWindow }: WindowButtonsProps) {
  const said = useWords().screens.channels;
  const middle = (seen[0] + seen[1]) / 2;
  return (
    <Group aria-label={said.part} className={cx(styles.window)}>
      <Button
        look="icon"
        aria-label={said.left}
        isDisabled={isAll}
        onPress={() => onWindow(panned(seen, whole, -0.25))}
      >
        <ChevronLeft aria-hidden />
      </Button>
      <Button
        look="icon"
        aria-label={said.zoomOut}
        isDisabled={isAll}
        onPress={() => onWindow(zoomed(seen, whole, 2, middle))}
      >
        <ZoomOut aria-hidden />
      </Button>
      <Button look="icon" aria-label={said.zoomIn} onPress={() => onWindow(zoomed(seen, whole, 0.5, middle))}>
        <ZoomIn aria-hidden />
      </Button>
      <Button
        look="icon"
        aria-label={said.right}
        isDisabled={isAll}
        onPress={() => onWindow(panned(seen, whole, 0.25))}
      >
        <ChevronRight aria-hidden />
      </Button>
      <Button look="plain" isDisabled={isAll} onPress={() => onWindow(null)}>
        {said.all}
      </Button>
    </Group>
  );
}
