import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sourceFiles } from '../../layers/import-graph.ts';
import { fixedDigits, writtenUnits } from '../../support/written-units.ts';

const project = new URL('../../..', import.meta.url).pathname;
const files = [
  ...sourceFiles(project, 'renderer'),
  ...sourceFiles(project, 'core/words'),
  ...sourceFiles(project, 'core/handover'),
  ...sourceFiles(project, 'electron/cli'),
];
const read = (file: string) => readFileSync(join(project, file), 'utf8');

/** Texts that name a unit on purpose, each with why. */
const onPurpose: readonly { readonly file: RegExp; readonly text: RegExp; readonly why: string }[] = [
  {
    file: /core\/words\/(de\/)?explained/,
    text: /./,
    why: 'where a formula holds, in the units of its source',
  },
  {
    file: /core\/words\/../,
    text: /^(Metric|Metrisch|Imperial), /,
    why: 'the name of a choice of units',
  },
  { file: /derived/, text: /boost|Pressure|20 kPa/, why: 'a formula, in which a unit is written by hand' },
  { file: /core\/words\/..\/log/, text: /boost \+ 100 kPa/, why: 'a formula' },
  { file: /FluidFacts|verbs\/fluid/, text: /^#\s(?:kg\/kg|MJ\/kg)$/, why: 'no other unit is offered for it' },
  { file: /core\/words\/..\/charge/, text: /µm/, why: 'drops are measured in nothing else' },
  { file: /core\/words\/..\/fit/, text: /# mL/, why: 'a spoonful in a cylinder, not a tank' },
  { file: /core\/words\/..\/power/, text: /kg\/m³/, why: 'air; the unit of fluids would show thousandths' },
  { file: /handover-phrases/, text: /20 °C/, why: 'the temperature at which densities are tabled' },
  {
    file: /handover/,
    text: /100 km/,
    why: 'a round distance; the field that it is typed in says the same',
  },
  {
    file: /visit-section/,
    text: /^#\s(?:mm|kg\/m³)$/,
    why: 'the gap of a plug and the density of air, as on the customer’s page',
  },
  { file: /handover-style|handover\/lay-pages/, text: /mm|pt/, why: 'sizes on paper' },
  { file: /screens\/sheet/, text: /lb\/hp h/, why: 'a hint that says both units' },
  { file: /screens\/entry/, text: /4,400 rpm/, why: 'an example of what a person may type' },
];

/** A `toFixed` that no reader sees, each with why. */
const unseen: readonly { readonly file: RegExp; readonly why: string }[] = [
  { file: /tables\/TraceOverlay/, why: 'coordinates of a drawing' },
];

describe('texts', () => {
  it('write no unit of their own: the reader chose it', () => {
    expect(files.length).toBeGreaterThan(400);
    const found = files
      .flatMap((file) => writtenUnits(file, read(file)))
      .filter((u) => !onPurpose.some((p) => p.file.test(u.file) && p.text.test(u.text)))
      .map((u) => `${u.file}:${u.line} ${u.text}`);
    expect(found).toEqual([]);
  });

  it('write no number past the decimal sign of the language', () => {
    const found = files
      .flatMap((file) => fixedDigits(file, read(file)))
      .filter((u) => !unseen.some((p) => p.file.test(u.file)))
      .map((u) => `${u.file}:${u.line} ${u.text}`);
    expect(found).toEqual([]);
  });
});

describe('the reader of units', () => {
  it.each([
    ['a unit behind a number', "const a = 'usual are 3 to 15 kPa';"],
    ['a unit behind what a template fills in', ['const a = `', '{x} rpm`;'].join('$')],
    ['a unit in a head', "const a = 'Dry air, kg/m³';"],
    ['a unit in an element', 'const a = <p>{x} 12 bar</p>;'],
  ])('finds %s', (_, text) => {
    expect(writtenUnits('planted.tsx', text)).toHaveLength(1);
  });

  it.each([
    ['the id of a unit', "const a = convert(x, 'kPa', 'psi');"],
    ['the name of a key', 'const a = { boost_kPa: 1 };'],
    ['a word', "const a = 'the bar under the chart';"],
  ])('leaves %s', (_, text) => {
    expect(writtenUnits('planted.tsx', text)).toEqual([]);
  });

  it('finds digits that are fixed for a reader, and leaves those that become a number again', () => {
    expect(fixedDigits('planted.ts', 'say(x.toFixed(1))')).toHaveLength(1);
    expect(fixedDigits('planted.ts', 'keep(Number(x.toFixed(1)))')).toEqual([]);
  });
});
