import { parseArgs } from 'node:util';

export type StartOptions = {
  /** 0 lets the system choose. */
  readonly port: number;
  /** A session folder to open; undefined opens the copy of the sample. */
  readonly session: string | undefined;
  /** Opens no window and no browser by itself. */
  readonly isQuiet: boolean;
  /** Serves the browser even where the desktop shell could run. */
  readonly wantsBrowser: boolean;
  readonly wantsHelp: boolean;
};

export const startHelp = `npm start -- [options]

  --session FOLDER  open this session instead of the invented sample
  --browser         serve the workbench to the browser, also where the desktop shell could run
  --port NUMBER     serve on this port of 127.0.0.1 (a free one otherwise)
  --no-open         open no window and no browser, only print the link
  --help            this text`;

/** Reads the command line of `npm start`; a string says what is wrong with it. */
export function startOptions(words: readonly string[]): StartOptions | string {
  try {
    const { values } = parseArgs({
      args: [...words],
      options: {
        session: { type: 'string' },
        browser: { type: 'boolean', default: false },
        port: { type: 'string', default: '0' },
        'no-open': { type: 'boolean', default: false },
        help: { type: 'boolean', default: false },
      },
    });
    const port = Number(values.port);
    if (!Number.isInteger(port) || port < 0 || port > 65_535)
      return `--port takes 0 to 65535, not ${values.port}`;
    return {
      port,
      session: values.session,
      isQuiet: values['no-open'],
      wantsBrowser: values.browser,
      wantsHelp: values.help,
    };
  } catch (error) {
    return (error as Error).message;
  }
}
