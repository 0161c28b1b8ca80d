/**
 * One request to the host over loopback HTTP: the body of its answer as it came, unchecked.
 *
 * @throws where the host is gone or the request was called off
 */
export async function postRequest(
  base: string,
  name: string,
  input: unknown,
  signal: AbortSignal | null = null,
): Promise<unknown> {
  const response = await fetch(`${base}api/${name}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ input, requestId: crypto.randomUUID() }),
    credentials: 'same-origin',
    signal,
  });
  return response.json();
}
