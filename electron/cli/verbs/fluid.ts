import { type FluidSheet, fluidJson, fluidOf, mixBases } from '../../../core/fluids/index.ts';
import { fail, ok, type Result } from '../../../core/result/index.ts';
import { celsius } from '../../../core/units/index.ts';
import { noteText } from '../../../core/words/index.ts';
import { type Arguments, singleValue } from '../args.ts';
import { type Answer, terminalShow as show, table } from '../output.ts';

const usage =
  'onechange fluid [--methanol PERCENT] [--ethanol PERCENT] [--by poured|finished|mass] [--at CELSIUS] ' +
  '[--ambient CELSIUS] [--density KG_M3 --alcohol methanol|ethanol] [--json]';

const percent = (share: number) => show.quantity(share, 'share');

function sheetText(sheet: FluidSheet): string {
  const { mix, finished, poured, flash, freezing } = sheet;
  const rows: [string, string][] = [
    [
      'methanol',
      `${percent(poured.methanol)} poured, ${percent(mix.massShares.methanol)} by mass, ${percent(finished.methanol)} by volume of the mix`,
    ],
    [
      'ethanol',
      `${percent(poured.ethanol)} poured, ${percent(mix.massShares.ethanol)} by mass, ${percent(finished.ethanol)} by volume of the mix`,
    ],
    ['lost on mixing', percent(sheet.contraction)],
    ['density', show.quantity(sheet.density, 'density', 4)],
    ['heat capacity', `${show.number(sheet.heatCapacity / 1e3, 2)} kJ/(kg K)`],
    ['latent heat', show.quantity(sheet.latentHeat, 'energyPerMass', 0)],
    ['viscosity', `${show.number(sheet.viscosity * 1e3, 2)} mPa s`],
    [
      'freezes at',
      `${freezing.isUpperLimit ? 'below ' : ''}${show.quantity(freezing.temperature, 'temperature')}`,
    ],
    [
      'flash point',
      flash
        ? `${show.quantity(flash.cautious, 'temperature')}, the cautious end`
        : `none below ${show.quantity(celsius(100), 'temperature', 0)}`,
    ],
    ['air to burn it', `${show.number(sheet.airDemand, 2)} kg/kg`],
    ['heating value', `${show.number(sheet.lowerHeatingValue / 1e6, 2)} MJ/kg`],
  ];
  return [table(rows), ...sheet.notes.map((n) => noteText(n, show))].join('\n\n');
}

/** Every number of the sheet, with its remarks as sentences. */
function sheetJson(sheet: FluidSheet) {
  return { ...fluidJson(sheet), notes: sheet.notes.map((n) => ({ code: n.code, text: noteText(n, show) })) };
}

export const verb = {
  usage,
  what: 'Properties of a water-alcohol mix: density, heats, freezing and flash point, air demand; or its strength from a hydrometer.',
  options: {
    methanol: 'one',
    ethanol: 'one',
    by: 'one',
    at: 'one',
    ambient: 'one',
    density: 'one',
    alcohol: 'one',
  },
  async run(args: Arguments): Promise<Result<Answer>> {
    const numbers: Record<string, number | undefined> = {};
    for (const name of ['methanol', 'ethanol', 'at', 'ambient', 'density']) {
      const text = singleValue(args, name);
      const value = text === undefined ? undefined : Number(text.replace(',', '.'));
      if (value !== undefined && !Number.isFinite(value)) {
        const facts = { option: `--${name}`, value: text ?? '', choices: 'a number' };
        return fail({ code: 'terminal/not-a-choice', facts });
      }
      numbers[name] = value;
    }
    const by = singleValue(args, 'by') ?? 'poured';
    const basis = mixBases.find((b) => b === by);
    if (!basis) {
      const facts = { option: '--by', value: by, choices: mixBases.join(', ') };
      return fail({ code: 'terminal/not-a-choice', facts });
    }
    const alcohol = singleValue(args, 'alcohol') ?? 'methanol';
    if (alcohol !== 'methanol' && alcohol !== 'ethanol') {
      const facts = { option: '--alcohol', value: alcohol, choices: 'methanol, ethanol' };
      return fail({ code: 'terminal/not-a-choice', facts });
    }
    const { density } = numbers;
    const sheet = fluidOf({
      by: basis,
      methanol_percent: numbers.methanol ?? 0,
      ethanol_percent: numbers.ethanol ?? 0,
      temperature_C: numbers.at ?? 20,
      ambient_C: numbers.ambient ?? null,
      hydrometer: density === undefined ? null : { alcohol, scale: 'density', value: density },
    });
    return sheet.ok ? ok({ text: sheetText(sheet.value), json: sheetJson(sheet.value) }) : sheet;
  },
} as const;
