import { expect, test } from 'vitest';
import type { ChartMark, ChartSpec } from '../../../core/handover/index.ts';
import { frame, panelBoxes } from '../../../renderer/chart/chart-frame.ts';
import { axisTexts, markTexts } from '../../../renderer/chart/chart-texts.ts';
import { plotlyFigure } from '../../../renderer/chart/plotly-figure.ts';

const width = 600;
const height = 400;
const axis = (title: string, low: number, high: number) => ({
  title,
  range: [low, high] as const,
  ticks: [low, high].map((at) => ({ at, text: `${title} ${at}` })),
});
const line: ChartMark = {
  kind: 'line',
  ink: 'after',
  dash: 'solid',
  weight: 'main',
  x: [0, 50],
  y: [0, 10],
  label: 'after',
  labelSide: 'above',
};
const spec = (marks: readonly ChartMark[], spans: ChartSpec['spans'] = null): ChartSpec => ({
  description: 'two panels',
  x: axis('speed', 0, 100),
  panels: [
    { id: 'upper', share: 0.75, y: axis('power', 0, 20), marks },
    { id: 'lower', share: 0.25, y: axis('boost', -1, 1), marks: [] },
  ],
  spans,
});
const [upper, lower] = panelBoxes(spec([]), height).panels;

test('every tick and title of every axis stands once, at its place', () => {
  const texts = axisTexts(spec([]), width, height);
  const at = Object.fromEntries(texts.map(({ text, x, y, align, base }) => [text, { x, y, align, base }]));
  expect(texts.map(({ text }) => text).sort()).toEqual(
    ['boost', 'boost -1', 'boost 1', 'power', 'power 0', 'power 20', 'speed', 'speed 0', 'speed 100'].sort(),
  );
  expect(at['power 20']).toMatchObject({ y: frame.top + 0.5, align: 'end', base: 'middle' });
  expect(at['boost -1']?.y).toBeCloseTo((lower?.top ?? 0) + (lower?.height ?? 0), -0.5);
  expect(at['speed 0']).toMatchObject({ x: frame.left, align: 'middle', base: 'top' });
  expect(at['speed 100']?.x).toBe(width - frame.right);
  expect(at.power).toMatchObject({ x: frame.left, align: 'start', base: 'bottom' });
  expect(at.power?.y).toBeLessThan(frame.top);
});

test('the strip under the panels has its name beside it', () => {
  const spans = { label: 'proven', parts: [] };
  const name = axisTexts(spec([], spans), width, height).find(({ text }) => text === 'proven');
  const strip = panelBoxes(spec([], spans), height).spans;
  expect(name).toMatchObject({ align: 'end', y: (strip?.top ?? 0) + (strip?.height ?? 0) / 2 });
});

test('a line is named at its end, above or below it', () => {
  const [above] = markTexts(spec([line]), width, height);
  const [below] = markTexts(spec([{ ...line, labelSide: 'below' }]), width, height);
  const end = {
    x: frame.left + (width - frame.left - frame.right) / 2,
    y: frame.top + (upper?.height ?? 0) / 2,
  };
  expect(above).toMatchObject({ text: 'after', ink: 'after', x: end.x, align: 'end', base: 'bottom' });
  expect(below).toMatchObject({ x: end.x, base: 'top' });
  expect(above?.y).toBeLessThan(end.y);
  expect(below?.y).toBeGreaterThan(end.y);
});

test('a gap at the end and samples beyond the window do not move a name out of the plot', () => {
  const [gap] = markTexts(spec([{ ...line, x: [0, 50, 60], y: [0, 10, null] }]), width, height);
  const [beyond] = markTexts(spec([{ ...line, x: [0, 50, 160], y: [0, 10, 12] }]), width, height);
  const [plain] = markTexts(spec([line]), width, height);
  expect(gap).toEqual(plain);
  expect(beyond).toEqual(plain);
});

test('what ends outside its panel, a band and a mark without a name have no word', () => {
  const marks: ChartMark[] = [
    { ...line, y: [0, 30] },
    { ...line, label: '' },
    { ...line, y: [null, null] },
    { kind: 'band', ink: 'after', x: [0, 50], low: [0, 1], high: [1, 2] },
    { kind: 'rule', ink: 'soft', dash: 'dotted', along: 'x', at: 21, label: 'over the top' },
  ];
  expect(markTexts(spec(marks), width, height)).toEqual([]);
});

test('plotly is left no word to lay out: of all texts none is in its figure', () => {
  const full = spec([line], { label: 'proven', parts: [{ ink: 'gain', from: 0, to: 50 }] });
  const colours = {
    ink: () => '#111111',
    wash: () => '#22222230',
    soft: '#333333',
    rule: '#444444',
    font: 'f',
  };
  const { layout } = plotlyFigure(full, colours, width, height);
  const texts = [...axisTexts(full, width, height), ...markTexts(full, width, height)];
  expect(texts.map(({ text }) => text)).toContain('proven');
  for (const { text } of texts) expect(JSON.stringify(layout)).not.toContain(`"${text}"`);
  expect(layout).toMatchObject({ xaxis: { visible: false }, yaxis: { showticklabels: false } });
});
