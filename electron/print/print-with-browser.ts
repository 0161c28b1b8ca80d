import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Readable, Writable } from 'node:stream';
import { pathToFileURL } from 'node:url';
import { fail, ok, type Result } from '../../core/result/index.ts';
import { devtoolsPipe } from './devtools-pipe.ts';
import { findBrowser } from './find-browser.ts';
import { steadyPdf } from './steady-pdf.ts';

/** A slow disk and a cold browser included. */
const patience_ms = 90_000;

function switches(profile: string): string[] {
  return [
    '--headless',
    '--remote-debugging-pipe',
    `--user-data-dir=${profile}`,
    '--no-first-run',
    '--no-default-browser-check',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    '--disable-extensions',
    '--disable-gpu',
    '--disable-dev-shm-usage',
    // Whatever asks for a name gets none: the page is complete, and the browser has nothing to fetch.
    '--host-resolver-rules=MAP * ~NOTFOUND',
    // The sandbox refuses to start for root, as on a build machine.
    ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
  ];
}

/**
 * A page as tagged PDF, by a browser that is installed here: without window, script or network, in a profile that
 * is gone afterwards. Paper and margins are the page's own.
 *
 * @param date  stated in the file instead of the moment of printing
 *
 * The same page gives the same text and layout; the same bytes too as far as the browser's own order of things goes,
 * which is seen to hold and is not promised.
 *
 * Errors: handover/no-browser, handover/print-failed with what the browser said.
 */
export async function printWithBrowser(page: { html: string; date: string }): Promise<Result<Uint8Array>> {
  const browser = await findBrowser({ platform: process.platform, environment: process.env });
  if (browser === null) {
    return fail({ code: 'handover/no-browser', facts: { asked: process.env.ONECHANGE_BROWSER ?? null } });
  }
  const folder = await mkdtemp(join(tmpdir(), 'onechange-print-'));
  const child = spawn(browser, switches(join(folder, 'profile')), {
    stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'],
    // A group of its own, so that nothing of it is left running.
    detached: process.platform !== 'win32',
  });
  try {
    const file = join(folder, 'page.html');
    await writeFile(file, page.html);
    const pdf = await withPatience(child, printed(child, pathToFileURL(file).href));
    return ok(steadyPdf(pdf, page.date));
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    return fail({ code: 'handover/print-failed', facts: { browser, detail } });
  } finally {
    await ended(child);
    await rm(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

async function printed(child: ChildProcess, address: string): Promise<Uint8Array> {
  const { send, once } = devtoolsPipe(child.stdio[3] as Writable, child.stdio[4] as Readable);
  const { targetId } = await send('Target.createTarget', { url: 'about:blank' });
  const { sessionId } = (await send('Target.attachToTarget', { targetId, flatten: true })) as {
    sessionId: string;
  };
  await send('Emulation.setScriptExecutionDisabled', { value: true }, sessionId);
  await send('Page.enable', {}, sessionId);
  const loaded = once('Page.loadEventFired');
  await send('Page.navigate', { url: address }, sessionId);
  await loaded;
  // The page's own scripts stay off; this asks the browser itself whether the fonts in the file are ready.
  await send('Runtime.evaluate', { expression: 'document.fonts.ready', awaitPromise: true }, sessionId);
  const { data } = await send(
    'Page.printToPDF',
    {
      printBackground: true,
      preferCSSPageSize: true,
      displayHeaderFooter: false,
      generateTaggedPDF: true,
      generateDocumentOutline: true,
    },
    sessionId,
  );
  // Answered or not: the process is ended right after.
  void send('Browser.close').catch(() => undefined);
  return Buffer.from(data as string, 'base64');
}

function withPatience<T>(child: ChildProcess, work: Promise<T>): Promise<T> {
  return new Promise<T>((resolve, reject) => {
    const timer = setTimeout(
      () => reject(new Error(`no answer within ${patience_ms / 1000} s`)),
      patience_ms,
    );
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`it ended with code ${code}`)));
    work.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

/** Ends the browser with all processes it started; one that is gone already is fine. */
function ended(child: ChildProcess): Promise<void> {
  return new Promise((resolve) => {
    if (child.exitCode !== null || child.pid === undefined) return resolve();
    child.once('exit', () => resolve());
    const grace = setTimeout(() => {
      try {
        if (process.platform === 'win32') child.kill();
        else process.kill(-(child.pid as number), 'SIGKILL');
      } catch {
        resolve();
      }
    }, 2000);
    child.once('exit', () => clearTimeout(grace));
  });
}
