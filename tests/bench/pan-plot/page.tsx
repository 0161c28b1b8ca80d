/// <reference types="vite/client" />
import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import { createRoot } from 'react-dom/client';
import type { ChartSpec } from '../../../core/handover/index.ts';
import { LinesChart } from '../../../renderer/chart/LinesChart.tsx';
import { type PlotWindow, panned } from '../../../renderer/chart/plot-window.ts';

const panelCount = 4;
const pullsEach = 5;
const samples = 50_000;
const whole: PlotWindow = [0, samples / 5000];

/** Four panels of five pulls of fifty thousand samples: a million points. */
function millionPoints(): ChartSpec['panels'] {
  return Array.from({ length: panelCount }, (_, p) => ({
    id: `p${p}`,
    share: 1 / panelCount,
    y: { title: `Channel ${p}`, range: [-2, 2], ticks: [-1, 0, 1].map((at) => ({ at, text: `${at}` })) },
    marks: Array.from({ length: pullsEach }, (_, k) => ({
      kind: 'line' as const,
      ink: k < 2 ? ('before' as const) : ('after' as const),
      dash: k < 2 ? ('dashed' as const) : ('solid' as const),
      weight: 'thin' as const,
      x: Array.from({ length: samples }, (_, i) => i / 5000),
      y: Array.from(
        { length: samples },
        (_, i) => Math.sin(i / 3000 + p + k / 9) + 0.4 * Math.sin(i * (1.3 + 0.1 * k)),
      ),
      label: '',
      labelSide: 'above' as const,
    })),
  }));
}

const panels = millionPoints();

declare global {
  interface Window {
    /** Pans for so many seconds, or does nothing in each frame: times between frames, and work in each [ms]. */
    panFrames: (
      seconds: number,
      isPanning: boolean,
      width_s: number,
    ) => Promise<{ between: number[]; work: number[] }>;
  }
}

function Page() {
  const [seen, setSeen] = useState<PlotWindow>(whole);
  useEffect(() => {
    window.panFrames = (seconds, isPanning, width_s) =>
      new Promise((resolve) => {
        const between: number[] = [];
        const work: number[] = [];
        const begin = performance.now();
        let last = begin;
        let at: PlotWindow = [0, width_s];
        let step = 0.01;
        const frame = () => {
          const now = performance.now();
          between.push(now - last);
          last = now;
          if (now - begin > 1000 * seconds) {
            resolve({ between: between.slice(2), work: work.slice(2) });
            return;
          }
          if (isPanning) {
            if (at[1] >= whole[1] - 0.01) step = -0.01;
            if (at[0] <= whole[0] + 0.01) step = 0.01;
            at = panned(at, whole, step) ?? at;
            const next = at;
            flushSync(() => setSeen(next));
          }
          work.push(performance.now() - now);
          requestAnimationFrame(frame);
        };
        requestAnimationFrame(frame);
      });
  }, []);
  const ticks = Array.from({ length: 11 }, (_, i) => i).filter((t) => t >= seen[0] && t <= seen[1]);
  return (
    <div style={{ width: 1200, height: 690 }}>
      <LinesChart
        spec={{
          description: 'A million points',
          x: { title: 'Time, s', range: seen, ticks: ticks.map((at) => ({ at, text: `${at}` })) },
          panels,
          spans: null,
        }}
        whole={whole}
        cursor={null}
        cursorText=""
        onCursor={() => {}}
        onWindow={() => {}}
      />
    </div>
  );
}

const root = document.getElementById('root');
if (root) createRoot(root).render(<Page />);
