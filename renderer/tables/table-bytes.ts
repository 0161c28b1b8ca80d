import type { SessionTable } from '../../core/session/index.ts';

export type TableFile = { readonly text: string; readonly encoding: SessionTable['encoding'] };

/**
 * The text of a file without losing a byte: UTF-8 with its mark kept, else one letter a byte. Null for a file that is no
 * text at all.
 */
export async function readTableFile(file: File): Promise<TableFile | null> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  if (bytes.includes(0)) return null;
  try {
    const text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
    return { text, encoding: 'utf-8' };
  } catch {
    return { text: Array.from(bytes, (b) => String.fromCharCode(b)).join(''), encoding: 'latin1' };
  }
}

/** The bytes of a text again. */
export function bytesOf(text: string, encoding: SessionTable['encoding']): Uint8Array<ArrayBuffer> {
  if (encoding === 'utf-8') return new TextEncoder().encode(text);
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}

/** Into the clipboard byte for byte, as the copy that the person asked for; false where the window may not. */
export function copyText(text: string): boolean {
  let isTaken = false;
  const onCopy = (event: ClipboardEvent) => {
    event.clipboardData?.setData('text/plain', text);
    event.preventDefault();
    isTaken = true;
  };
  document.addEventListener('copy', onCopy, { capture: true, once: true });
  document.execCommand('copy');
  document.removeEventListener('copy', onCopy, { capture: true });
  return isTaken;
}
