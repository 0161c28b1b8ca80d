import { firstAnswer } from './host/first-answers.ts';
import './picture/first-paint.ts';
import './host/without-compiling.ts';
import './design/base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/App.tsx';
import { warmPlotlyWhenFilesCome } from './chart/warm-plotly.ts';
import { createHostClient } from './host/client.ts';
import { takeAwayWhenDrawn } from './picture/take-away.ts';

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no #root');
takeAwayWhenDrawn(root);
createRoot(root).render(
  <StrictMode>
    <App client={createHostClient(firstAnswer)} />
  </StrictMode>,
);
warmPlotlyWhenFilesCome(document);
