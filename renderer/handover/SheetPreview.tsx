import { type RefObject, useEffect, useRef } from 'react';
import { fitPages, layPages } from './lay-pages.ts';

export type SheetPreviewProps = {
  readonly frame: RefObject<HTMLIFrameElement | null>;
  readonly html: string;
  readonly title: string;
  readonly className: string | undefined;
};

function fitInto(frame: HTMLIFrameElement, width_px: number): void {
  const desk = getComputedStyle(frame).backgroundColor;
  const doc: { readonly documentElement: HTMLElement | null } | null = frame.contentDocument;
  // While a newer summary replaces the last one, the document has nothing in it for a moment.
  if (frame.contentDocument && doc?.documentElement) fitPages(frame.contentDocument, width_px, desk);
}

/** The summary as sheets of its paper, laid anew with each change; the place that was looked at stays in sight. */
export function SheetPreview({ frame, html, title, className }: SheetPreviewProps) {
  const place = useRef(0);
  useEffect(() => {
    const element = frame.current;
    if (!element) return;
    const seen = new ResizeObserver(([entry]) => {
      if (entry) fitInto(element, entry.contentRect.width);
    });
    seen.observe(element);
    return () => seen.disconnect();
  }, [frame]);
  const lay = async () => {
    const window = frame.current?.contentWindow;
    if (!window) return;
    if (frame.current) fitInto(frame.current, frame.current.clientWidth);
    await layPages(window.document, () => window.scrollTo(0, place.current));
    window.addEventListener('scroll', () => {
      place.current = window.scrollY;
    });
  };
  return (
    // Scripts stay forbidden inside: the summary needs none, and what stands in it came from files.
    <iframe
      ref={frame}
      className={className}
      title={title}
      sandbox="allow-same-origin allow-modals"
      srcDoc={html}
      onLoad={() => void lay()}
    />
  );
}
