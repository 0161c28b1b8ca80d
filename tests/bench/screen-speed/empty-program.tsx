/** A page that says one word, over the whole program of the workbench: fetched and run as there, mounted trivially. */
/// <reference path="../../../renderer/chart/plotly.d.ts" />
import '../../../renderer/design/base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from '../../../renderer/app/App.tsx';
import { createHostClient } from '../../../renderer/host/client.ts';

const root = document.createElement('div');
document.body.append(root);
createRoot(root).render(
  <StrictMode>
    <h1 data-program={`${typeof App} ${typeof createHostClient}`}>Empty</h1>
  </StrictMode>,
);
