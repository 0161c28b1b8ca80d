import type { ElectronApi } from './electron-api.ts';
import { denyPermissions } from './lockdown.ts';

const address = 'app://handover/';

/** The handover needs its own styles, fonts and drawings, and nothing that runs or is fetched. */
const policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:";

/**
 * Prints a handover to PDF, in a window that nobody sees, that runs no script, and whose session knows no
 * other address than this one page.
 */
export async function printHandover(electron: ElectronApi, html: string): Promise<Uint8Array> {
  // Without "persist:" it is kept in memory and gone with the window.
  const session = electron.session.fromPartition('handover');
  denyPermissions(session);
  session.webRequest.onBeforeRequest((details, answer) =>
    answer({ cancel: details.url !== address && !/^data:(image|font)\//.test(details.url) }),
  );
  session.protocol.handle('app', () => {
    const headers = { 'Content-Type': 'text/html; charset=utf-8', 'Content-Security-Policy': policy };
    return new Response(html, { headers });
  });
  const window = new electron.BrowserWindow({
    show: false,
    webPreferences: {
      session,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      javascript: false,
    },
  });
  try {
    await window.loadURL(address);
    return await window.webContents.printToPDF({
      printBackground: true,
      preferCSSPageSize: true,
      generateTaggedPDF: true,
      generateDocumentOutline: true,
    });
  } finally {
    session.protocol.unhandle('app');
    window.destroy();
  }
}
