/**
 * The part of EventSource that our client uses, on fetch: Node has none without a flag. Reads `data:` lines of
 * a stream of server-sent events until it is closed.
 */
export class FetchEventSource {
  onmessage: ((message: MessageEvent<string>) => void) | null = null;
  readonly #cancel = new AbortController();

  constructor(url: string) {
    void this.#read(url).catch(() => {
      // Closed on purpose, or the server is gone; the client asks again in either case.
    });
  }

  close(): void {
    this.#cancel.abort();
  }

  async #read(url: string): Promise<void> {
    const response = await fetch(url, { signal: this.#cancel.signal });
    const decoder = new TextDecoder();
    let text = '';
    for await (const chunk of response.body ?? []) {
      text += decoder.decode(chunk, { stream: true });
      const events = text.split('\n\n');
      text = events.pop() ?? '';
      for (const event of events)
        if (event.startsWith('data: '))
          this.onmessage?.(new MessageEvent('message', { data: event.slice('data: '.length) }));
    }
  }
}
