/** A font file on its way into a sheet that must stand alone. */
export type HandoverFont = {
  readonly family: 'serif' | 'sans';
  readonly letters: 'latin' | 'latin-ext' | 'greek';
  /** woff2, base64. */
  readonly data: string;
};

/** Which letters a file brings. Source: the unicode-range of the Fontsource packages, shortened to what is used. */
const ranges: Readonly<Record<HandoverFont['letters'], string>> = {
  latin:
    'U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+0304,U+0308,U+0329,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FEFF,U+FFFD',
  'latin-ext':
    'U+0100-0130,U+0132-0151,U+0154-02BA,U+02BD-02C5,U+02C7-02CC,U+02CE-02D7,U+02DD-02FF,U+1D00-1DBF,U+1E00-1E9F,U+1EF2-1EFF,U+2020,U+20A0-20AB,U+20AD-20C0,U+2113,U+2C60-2C7F,U+A720-A7FF',
  greek: 'U+0370-0377,U+037A-037F,U+0384-038A,U+038C,U+038E-03A1,U+03A3-03FF',
};
const needed: Readonly<Record<HandoverFont['letters'], RegExp>> = {
  latin: /./,
  'latin-ext':
    /[\u0100-\u0130\u0132-\u0151\u0154-\u02ba\u02dd-\u02ff\u1d00-\u1dbf\u1e00-\u1eff\u20a0-\u20c0]/,
  greek: /[\u0370-\u03ff]/,
};
const names = { serif: 'Handover Serif', sans: 'Handover Sans' } as const;

/** Faces for the letters that `text` uses, so that a sheet carries no file in vain. */
export function fontFaces(fonts: readonly HandoverFont[], text: string): string {
  return fonts
    .filter((font) => needed[font.letters].test(text) && /^[A-Za-z0-9+/=]+$/.test(font.data))
    .map(
      (font) =>
        `@font-face{font-family:"${names[font.family]}";font-weight:200 900;font-display:block;src:url(data:font/woff2;base64,${font.data}) format("woff2");unicode-range:${ranges[font.letters]}}`,
    )
    .join('\n');
}
