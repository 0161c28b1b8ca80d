/**
 * Takes Electron's place when the built main script runs under plain Node, and reports on stdout as lines of
 * JSON: `{"calls": [...]}` once the window is opened, `{"answer": ...}` for each request sent through the
 * channel. Requests come as `{"name", "input"}` lines on stdin; the end of stdin asks the program to quit.
 */
import { createInterface } from 'node:readline';
import { electronDouble } from './electron-double.ts';

const folder = process.env.ONECHANGE_DOUBLE_FOLDER ?? '';
const double = electronDouble({ folder });

export const { app, BrowserWindow, dialog, ipcMain, Menu, protocol, screen, session, shell } =
  double.electron;
export default double.electron;

const tell = (message: unknown): void => console.log(JSON.stringify(message));

double.app.on('double-loaded', () => {
  tell({ calls: double.names() });
  const input = createInterface({ input: process.stdin });
  input.on('line', async (line) => {
    const { name, input: what } = JSON.parse(line);
    const handler = double.ipcHandlers.get('onechange:request');
    const event = {
      sender: { id: double.windows[0]?.webContents.id },
      senderFrame: { url: 'app://workbench/', parent: null },
    };
    tell({
      answer: await handler?.(
        ...([event, name, what, `r${Math.round(performance.now() * 1000)}`] as never[]),
      ),
    });
  });
  input.on('close', () => double.app.emit('before-quit', { preventDefault: () => {} }));
});
