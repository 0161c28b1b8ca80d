import { connect } from 'node:net';

export type RawAnswer = { readonly status: number; readonly head: string; readonly body: string };

/**
 * Sends bytes as they stand and reads until the other side closes. An HTTP library would repair exactly the
 * things that these tests are about.
 */
export function rawRequest(port: number, text: string, limit_ms = 5000): Promise<RawAnswer> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1');
    let answer = '';
    const finish = (): void => {
      clearTimeout(timer);
      socket.destroy();
      const [head = '', ...body] = answer.split('\r\n\r\n');
      resolve({ status: Number(head.split(' ')[1] ?? 0), head, body: body.join('\r\n\r\n') });
    };
    const timer = setTimeout(() => reject(new Error(`no end after ${limit_ms} ms: ${answer}`)), limit_ms);
    socket.on('data', (chunk) => {
      answer += chunk.toString('latin1');
    });
    socket.on('error', finish);
    socket.on('close', finish);
    socket.write(text);
  });
}

/** A request text with one header per line; `Connection: close` so that the answer has an end. */
export function requestText(line: string, headers: Readonly<Record<string, string>>, body = ''): string {
  const lines = Object.entries({ Connection: 'close', ...headers }).map(
    ([name, value]) => `${name}: ${value}`,
  );
  return [`${line} HTTP/1.1`, ...lines, '', body].join('\r\n');
}
