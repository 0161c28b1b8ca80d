import './design/base.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { config } from 'zod';
import { App } from './app/App.tsx';
import { createHostClient } from './host/client.ts';

// The page's policy forbids code made from text, and a probe for it would stand in the console as a fault.
config({ jitless: true });

const root = document.getElementById('root');
if (!root) throw new Error('index.html has no #root');
createRoot(root).render(
  <StrictMode>
    <App client={createHostClient()} />
  </StrictMode>,
);
