/** The room of rows of a list that are not drawn. */
export function ListGap({ height_px }: { height_px: number }) {
  return <li aria-hidden style={{ height: height_px, padding: 0, border: 0 }} />;
}
