/** The one call we make; the package's own types declare no default export. */
declare module 'temml' {
  const temml: { render(tex: string, element: HTMLElement, options: { displayMode: boolean }): void };
  export default temml;
}
