/** A page that says one word, over the same React and the same plotly as the workbench: what cannot be beaten. */
import plotly from 'plotly.js-dist-min';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';

const { react } = typeof plotly === 'function' ? plotly() : plotly;
const root = document.createElement('div');
document.body.append(root);
createRoot(root).render(
  <StrictMode>
    <h1 data-plotly={typeof react}>Empty</h1>
    <label>
      <input type="checkbox" /> nothing hangs on this
    </label>
  </StrictMode>,
);
