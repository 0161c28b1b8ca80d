import type { ChartInk } from '../../core/handover/index.ts';

export type ChartColours = {
  readonly ink: (ink: ChartInk) => string;
  /** The same ink, thin enough to lie behind a line. */
  readonly wash: (ink: ChartInk) => string;
  readonly soft: string;
  readonly rule: string;
  readonly font: string;
};

/** The tokens in force on this element, as a drawing library needs them: plain values. */
export function chartColours(element: Element): ChartColours {
  const style = getComputedStyle(element);
  const of = (name: string) => style.getPropertyValue(`--${name}`).trim();
  return {
    ink: (ink) => of(ink),
    wash: (ink) => `${of(ink)}${ink === 'within' ? '99' : '30'}`,
    soft: of('soft'),
    rule: of('rule'),
    font: of('sans'),
  };
}
