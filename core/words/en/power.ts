import type { NoteWordsOf, ProblemWordsOf } from '../dictionary.ts';
import { faintWind } from '../faint-wind.ts';

const missingField = {
  gearRatios: 'the gear ratios',
  finalDrive: 'the final drive',
  radius: 'the rolling radius or tyre size',
  gear: 'the gear of the pull',
} as const;
const unusable = {
  'no-number': 'no number',
  zeros: 'nothing but zeros',
  'below-zero': 'zero or less over most of it',
  'one-number': 'one and the same number all along',
  'too-much': 'more than any car makes',
} as const;
const signal = { 'engine-speed': 'engine speed', 'vehicle-speed': 'vehicle speed' } as const;

export const powerProblems: ProblemWordsOf<'power'> = {
  'power/no-speed': () => ({
    message: 'No speed is logged: neither engine speed nor vehicle speed.',
    remedy: 'Log engine speed, or map the column that holds it.',
  }),
  'power/no-gearing': (f) => ({
    message: `Only engine speed is logged, and ${missingField[f.missing]} is not known.`,
    remedy: `Enter ${missingField[f.missing]} in the car, or log vehicle speed too.`,
  }),
  'power/no-engine-speed': (f) => ({
    message: `Only vehicle speed is logged, and ${missingField[f.missing]} is not known, so engine speed can't be told.`,
    remedy: `Enter ${missingField[f.missing]} in the car, or log engine speed too.`,
  }),
  'power/no-dyno-reading': () => ({
    message: 'The place is a dyno, but no power or torque is logged.',
    remedy: 'Import the log that the dyno wrote, or say that this was driven on the road.',
  }),
  'power/dyno-reading-unusable': (f) => ({
    message: `Column “${f.column}” holds ${unusable[f.why]} in the pull, and no other tells power or torque.`,
    remedy: 'Export the log again with power or torque in it, or see under Columns what each was taken for.',
  }),
  'power/pull-too-short': (f, show) => ({
    message: `The pull holds ${show.number(f.samples)} usable speed samples over ${show.quantity(f.seconds, 'time', 1)}: too little for an acceleration.`,
    remedy: 'Log faster, or pull for longer in a higher gear.',
  }),
  'power/not-accelerating': (f, show) => ({
    message: `Speed hardly rises between ${show.quantity(f.from_s, 'time')} and ${show.quantity(f.to_s, 'time')}.`,
    remedy: 'Check the ends of the pull; power needs a full-throttle rise of engine speed.',
  }),
  'power/engine-too-fast': (f, show) => ({
    message: `The engine would turn at ${show.quantity(f.engineSpeed, 'engineSpeed')}.`,
    remedy: 'Check which column holds engine speed, its unit, and the gear ratios.',
  }),
  'power/bad-air': (f, show) => ({
    message: {
      pressure: `${show.quantity(f.value, 'pressure')} cannot be the barometer.`,
      temperature: `${show.quantity(f.value, 'temperature')} cannot be the air temperature.`,
      relativeHumidity: `${show.quantity(f.value, 'share', 0)} cannot be the relative humidity.`,
    }[f.field],
    remedy: 'Enter the air at the place as the instruments read it; the barometer not reduced to sea level.',
  }),
  'power/bad-tyre': (f) => ({
    message: `“${f.text}” is not a tyre size.`,
    remedy: 'Write it as on the sidewall, 225/45 R17.',
  }),
  'power/coast-down-too-short': (f, show) => ({
    message: `The coast-down loses ${show.quantity(f.speedDrop, 'speed')} in ${show.quantity(f.seconds, 'time', 0)} with ${show.number(f.samples)} samples: too little for three coefficients.`,
    remedy: 'Let the car roll in neutral from high speed down to walking pace, both ways on a level road.',
  }),
  'power/coast-down-none': () => ({
    message: 'The log holds no roll in neutral that loses enough speed: engine at idle, foot off, no brake.',
    remedy:
      'Let the car roll in neutral from high speed down to walking pace, or name the seconds of the rolls.',
  }),
  'power/coast-down-too-many': (f, show) => ({
    message: `${show.number(f.rolls)} rolls are too many for one fit; it takes ${show.number(f.most)}.`,
    remedy: 'Count only the rolls that were driven for it.',
  }),
  'power/coast-down-not-slowing': (f, show) => ({
    message: `The car does not slow down between samples ${show.number(f.from)} and ${show.number(f.to)}.`,
    remedy: 'Choose the part in which the car rolls in neutral.',
  }),
  'power/coast-down-no-fit': (f, show) => ({
    message: `No road load fits the ${show.number(f.samples)} samples.`,
    remedy:
      'Say of each roll which way it went, and leave out one with braking, clutch or a slope of its own in it.',
  }),
  'power/no-two-way': (f, show) => ({
    message: `Two-way averaging needs pulls in both directions; there are ${show.number(f.out)} out and ${show.number(f.back)} back.`,
    remedy: 'Drive the same stretch in the other direction too.',
  }),
  'power/no-common-band': () => ({
    message: 'The pulls share no band of engine speed.',
    remedy: 'Drive all of them in one gear over the same engine speeds.',
  }),
  'power/no-air-flow': () => ({
    message: 'No air mass flow is logged.',
    remedy: 'Log it, or map the column that holds it.',
  }),
};

export const powerNotes: NoteWordsOf<'power'> = {
  'power/default-drag-area': (f, show) =>
    `Drag area not given: ${show.quantity(f.dragArea, 'area')} taken, as is usual.`,
  'power/default-rolling': (f, show) =>
    `Rolling coefficient not given: ${show.number(f.coefficient, 3)} taken, as is usual.`,
  'power/default-efficiency': (f, show) =>
    `Drivetrain efficiency not given: ${show.quantity(f.efficiency, 'share', 0)} taken (82 to 92 % by practice), so engine power is a rough figure.`,
  'power/default-slip': (f, show) =>
    `Tyre slip is neither given nor measured: ${show.quantity(f.slip, 'share', 1)} at full force taken (1 to 3 % by practice).`,
  'power/default-air': (f, show) =>
    `Air temperature or barometer not given: air of ${show.number(f.density, 2)} kg/m³ taken for the drag.`,
  'power/default-humidity': (f, show) =>
    `Humidity not given: ${show.quantity(f.relativeHumidity, 'share', 0)} taken for the correction, which may be off by ${show.quantity(f.half, 'share', 1)} for it; the band holds that.`,
  'power/barometers-disagree': (f, show) =>
    `The barometer as entered, ${show.quantity(f.entered, 'pressure')}, is not that of the log, ${show.quantity(f.logged, 'pressure')}; the correction takes the entered one. Enter the pressure at the place, not the weather report's, which is reduced to sea level.`,
  'power/road-load-incomplete': () =>
    'The road load from a coast-down lacks a coefficient, so it was not used: enter all three.',
  'power/coast-down-one-way': (f, show) =>
    `Rolled one way only: slope and wind are in these coefficients. The intervals of A and of the forces allow for a road called level, ${show.quantity(f.grade, 'share', 1)} or so (${show.quantity(f.force, 'force', 0)}), but for no wind. Roll both ways.`,
  'power/coast-down-not-neutral': (f, show) =>
    `In ${f.file} the roll from ${show.quantity(f.from_s, 'time', 0)} on was in gear or with a foot on the pedal: the engine held it back or drove it. Leave it out.`,
  'power/coast-down-held-back': (f, show) =>
    `In ${f.file} something held the car back by ${show.quantity(f.force, 'force', 0)} more between ${show.quantity(f.from_s, 'time', 0)} and ${show.quantity(f.to_s, 'time', 0)}: a brake, a dip of the road or a gust. The fit takes it for rolling and drag, and its intervals do not know. Leave that roll out, or end it before.`,
  'power/coast-down-both-ways': (f, show) =>
    `Out and back differ as on a slope of ${show.difference(f.grade, 'share', 1)} and in ${
      Math.abs(f.headwind) < faintWind
        ? 'hardly any wind'
        : `${show.quantity(Math.abs(f.headwind), 'speed', 0)} of ${f.headwind < 0 ? 'wind from behind' : 'headwind'} on the way out`
    }; both were taken off.`,
  'power/coast-down-beyond': (f, show) =>
    `Rolled between ${show.quantity(f.from, 'speed', 0)} and ${show.quantity(f.to, 'speed', 0)}. A force beyond is extrapolated: it holds as far as A, B and C do there, and its interval does not know that.`,
  'power/coast-down-logs-differ': (f, show) =>
    `Between ${f.file} and ${f.other} the force the same way moved by ${show.differenceWithHalf(f.force, f.half, 'force')}, ${
      {
        'one-way': 'as with other wind, another stretch or another mass',
        alike: 'both ways alike, as with another mass, tyres or air',
        against: 'up one way and down the other, as with other wind or another stretch',
      }[f.kind]
    }. The fit takes the mean: roll again, or leave one log out.`,
  'power/coast-down-two-speeds': () =>
    'Some logs hold speed by satellite and the others by the wheels, which may differ by percents. Log the same one in all.',
  'power/coast-down-neutral-untold': () =>
    'No engine speed is logged, so nothing shows that the car rolled in neutral: in gear with a closed throttle the engine brakes too.',
  'power/level-assumed': () => 'The road is taken as level.',
  'power/wheel-inertia-not-counted': (f, show) =>
    `Wheel inertia not given and not counted; usual wheels are worth ${show.quantity(f.share, 'share', 0)} of the mass, so wheel power reads 2 to 3 % low.`,
  'power/engine-inertia-not-counted': () =>
    'Engine inertia not given and not counted, so engine power reads a little low, most in low gears.',
  'power/radius-from-tyre': (f, show) =>
    `Rolling radius ${show.number(f.radius, 3)} m worked out from the tyre size ${f.tyre}.`,
  'power/gearing-from-speed': (f, show) =>
    `Gearing read from the log: ${show.number(f.distancePerTurn, 3)} m of road per turn of the crank${
      f.radius === null ? '' : `, so the tyres roll on ${show.number(f.radius, 3)} m`
    }${f.overallRatio === null ? '' : `, ${show.number(f.overallRatio, 2)} of them per turn of a wheel`}.`,
  'power/slip-from-speed': (f, show) =>
    `Tyre slip read from the two logged speeds: ${show.quantity(f.slip, 'share', 1)} at full force.`,
  'power/speed-of-driven-wheels': (f, show) =>
    `The two logged speeds leave the tyres ${show.quantity(f.slip, 'share', 1)} of slip: vehicle speed may be that of driven wheels, and power then reads high by about twice the slip that hides, 3 to 4 % (generated drives). Log a wheel that is not driven, or compare pulls of this sensor with each other alone.`,
  'power/speeds-disagree': (f, show) =>
    `Logged vehicle speed differs by ${show.difference(f.difference, 'share', 1)} from engine speed, gear and tyre; the logged speed was believed. Check ratios, tyre size and the speed signal.`,
  'power/engine-ahead-of-road': (f, show) =>
    `Engine speed leaves the road by ${show.quantity(f.excess, 'share', 0)} within the pull, more than tyres slip under load: clutch, converter or driven wheels slip. Wheel power is from road speed alone; what slips is lost before it, so engine power reads low there. Where road speed is that of the wheels that spin, both read high.`,
  'power/speed-in-steps': (f, show) =>
    `The ${signal[f.basis]} is written in steps of ${
      f.basis === 'engine-speed' ? show.quantity(f.step, 'engineSpeed') : show.quantity(f.step, 'speed', 1)
    }.`,
  'power/speed-held': (f, show) =>
    `The ${signal[f.basis]} is read anew only every ${show.quantity(f.interval, 'time')}; the repeats were left out.`,
  'power/speed-late': (f, show) =>
    `Vehicle speed reaches the log ${show.quantity(f.lag, 'time')} after engine speed; that was allowed for.`,
  'power/outliers-left-out': (f, show) =>
    `${show.number(f.count)} speed samples far off the rest were left out.`,
  'power/grade-from-altitude': (f, show) =>
    `Slope from the logged altitude: ${show.differenceWithHalf(f.grade, 2 * f.error, 'share', 1)}.`,
  'power/altitude-with-speed': (f, show) =>
    `The logged altitude goes with the car's speed, as a barometer does in the car's own wind (it would show ${show.difference(f.grade, 'share', 1)}); it was not used.`,
  'power/altitude-stands-still': () =>
    'The logged altitude is one and the same number all through the pull, so it says nothing of a slope.',
  'power/altitude-unit-untold': (f, show) =>
    `Nothing says which unit “${f.column}” has; in ${show.symbol(f.unit, 'length')} it would show a slope of ${show.difference(f.grade, 'share', 1)}. It was not used: set its unit under Columns.`,
  'power/altitude-unclear': (f, show) =>
    `The logged altitude shows no clear slope (${show.differenceWithHalf(f.grade, 2 * f.error, 'share', 1)}); it was not used.`,
  'power/pull-trimmed': (f, show) =>
    `${show.quantity(f.seconds, 'time')} at the ends of the pull, in which speed did not rise, were left out.`,
  'power/torque-channel-not-used': (f) =>
    `Column “${f.column}” was not used for power: on the road such a channel is the control unit's own estimate.`,
  'power/reading-left-aside': (f) =>
    `Column “${f.column}” was not used for power: it holds ${unusable[f.why]} in the pull. ${
      f.instead === 'road' ? 'Power comes from acceleration instead.' : 'Another column was used.'
    }`,
  'power/wheel-torque-read': (f, show) =>
    f.at === 'axle'
      ? `Torque at the wheel in column “${f.column}” was taken as torque of the axle. Were it divided by the gear, as dynos often print it, power would be ${show.number(f.ratio ?? 1, 1)} times this.`
      : `Torque at the wheel in column “${f.column}” was taken as divided by the gear, as dynos often print it. Were it torque of the axle, power would be ${
          f.ratio === null
            ? 'much less: enter gear ratios, final drive and gear'
            : `this over ${show.number(f.ratio, 1)}`
        }.`,
  'power/reading-unit-assumed': (f, show) =>
    `Nothing says which unit “${f.column}” has; it was taken for ${show.symbol(f.unit, f.is)}, and power goes with it. Set it under Columns if that is wrong.`,
  'power/reading-late': (f, show) =>
    `Column “${f.column}” still holds half of its level ${show.quantity(f.lag, 'time')} after engine speed has begun to fall: it is smoothed or comes late. While power rises it reads low; the band holds that. Set the dyno’s smoothing to its least, or pull more slowly.`,
  'power/engine-reading': (f, show) =>
    `Column “${f.column}” was taken as read at the engine: wheel power is ${show.quantity(f.efficiency, 'share', 0)} of it, and the band holds how little that is known. If the dyno means the wheels, say so under Columns.`,
  'power/dyno-speed-by-gear': () =>
    'No engine speed is logged: it was worked out from road speed, gear and tyre, which slip on rollers.',
  'power/dyno-correction-unknown': (f) =>
    `Column “${f.column}” may already be corrected by the dyno; then choose no correction here.`,
  'power/ramp-inertia-added': (f, show) =>
    `Inertia of ${show.quantity(f.inertia, 'inertia', 3)} at engine speed that the dyno leaves out in the ramp was added.`,
  'power/ramp-inertia-no-gear': () =>
    'Inertia about the driven axle was not added: enter the gear ratios, the final drive and the gear of the pulls.',
  'power/correction-air-unknown': (f) =>
    `Not corrected to ${f.standard}: barometer or air temperature is not known or not plausible.`,
  'power/correction-out-of-range': (f, show) => {
    const shown = {
      temperature: `air temperature ${show.quantity(f.value, 'temperature', 0)} is outside ${show.quantity(f.from, 'temperature', 0)} to ${show.quantity(f.to, 'temperature', 0)}`,
      dryPressure: `dry air pressure ${show.quantity(f.value, 'pressure')} is outside ${show.quantity(f.from, 'pressure', 0)} to ${show.quantity(f.to, 'pressure', 0)}`,
      factor: `the factor ${show.number(f.value, 3)} is outside ${show.number(f.from, 2)} to ${show.number(f.to, 2)}`,
    }[f.what];
    return `${f.standard} is not made for this air: ${shown}. Compare only with pulls of the same day.`;
  },
  'power/correction-boosted': (f, show) =>
    `Boosted engine: where boost is held as an absolute pressure, the control has made up for the barometer already, and the true factor lies between 1 and ${show.number(f.factor, 3)}. ${
      {
        'ISO 1585':
          'ISO 1585 covers pressure-charged engines; UN R85 lets the factor be 1 where the control makes up for the air.',
        'SAE J1349': 'Older SAE rating codes left turbocharged petrol engines out for want of data.',
        'DIN 70020': 'DIN 70020 makes no difference for boost as far as we know.',
        none: '',
      }[f.standard]
    }`,
  'power/correction-boost-untold': (f, show) =>
    `No boost or manifold pressure is logged. If the engine is boosted and its boost is held as an absolute pressure, the control has made up for the barometer already, and the true factor of ${f.standard} lies between 1 and ${show.number(f.factor, 3)}.`,
  'power/airflow-at-end': (f, show) =>
    `Air mass flow stands at ${show.quantity(f.flow, 'massFlow')} from ${show.quantity(f.engineSpeed_rad_s, 'engineSpeed')} on, as a meter at the end of its range does; nothing was compared there. An engine control that fuels by it runs lean there.`,
  'power/airflow-agrees': (f, show) =>
    `Air mass flow agrees: on average over the pull it stands for ${show.quantity(f.air, 'power', 0)} at the engine, and ${show.quantity(f.power, 'power', 0)} were found (${show.quantity(f.ratio, 'share', 0)}).`,
  'power/airflow-disagrees': (f, show) =>
    `Air mass flow disagrees: on average over the pull it stands for ${show.quantity(f.air, 'power', 0)} at the engine, and ${show.quantity(f.power, 'power', 0)} were found (${show.quantity(f.ratio, 'share', 0)}); ${show.quantity(f.from, 'share', 0)} to ${show.quantity(f.to, 'share', 0)} would be usual. Check mass, gearing and the air meter's scale.`,
  'power/two-way-slope': (f, show) =>
    `Out and back differ as on a slope of ${show.differenceWithHalf(f.grade, f.half, 'share', 1)}, or as much wind.`,
};
