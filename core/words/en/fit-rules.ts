import type { FitRuleWords } from '../dictionary.ts';

export const fitRuleWords: FitRuleWords = {
  'after-the-blades': {
    question: 'Does every nozzle spray after the turbo or centrifugal compressor?',
    reason: 'Drops that hit fast blades erode them, and the wheel loses its balance.',
    remedy: 'Move the nozzle after the compressor.',
  },
  'after-the-cooler': {
    question: 'Does every nozzle spray after the charge cooler?',
    reason:
      'Fluid sprayed before the cooler collects in it, comes out in slugs, and feeds the cylinders unevenly.',
    remedy: 'Move the nozzle after the cooler.',
  },
  'before-the-throttle': {
    question: 'On a cooled turbo engine: does it spray after the cooler and before the throttle?',
    reason: 'There it has way to mix with the air and no vacuum pulls at it.',
    remedy: 'Move the nozzle to the pipe before the throttle, a hand’s length or more from it.',
  },
  'before-the-rotors': {
    question: 'On a roots or screw blower: does it spray before the blower?',
    reason: 'Slow rotors take the drops, and the fluid seals and cools them.',
    remedy: 'Move the nozzle before the blower; keep it small and well after the throttle plate.',
  },
  'away-from-blow-off': {
    question: 'Is the nozzle behind the blow-off valve, or is that valve not vented into the engine bay?',
    reason: 'A vented valve right behind the nozzle blows flammable mist into the hot engine bay.',
    remedy: 'Move the nozzle behind the valve, or lead its outlet back into the intake.',
  },
  'no-siphon': {
    question:
      'Do tank and pump lie below the point of injection, or does a shut-off valve close the line when the pump stands still?',
    reason:
      'A tank above the nozzle siphons into the intake overnight. Liquid in a cylinder stops the piston and bends the rod: hydraulic lock.',
    remedy: 'Lower the tank, or fit a shut-off valve that is closed without power.',
  },
  'no-vacuum-draw': {
    question:
      'Where the nozzle sees vacuum for long, does a valve hold that vacuum off the line (cruise, overrun, idle)?',
    reason:
      'Vacuum draws fluid through a plain nozzle: it floods the intake at idle and can lock a cylinder.',
    remedy: 'Fit a check valve that opens above the deepest vacuum, or a shut-off valve.',
  },
  'check-valve': {
    question: 'Is there a check valve at the nozzle, and does its arrow point to the engine?',
    reason: 'It keeps the line full, so fluid comes at once, and keeps boost from blowing the line empty.',
    remedy: 'Fit it right at the nozzle, arrow towards the engine.',
  },
  'pump-below-tank': {
    question: 'Does the pump’s inlet lie below the tank’s outlet?',
    reason: 'These pumps push well and suck badly; with air in front of them no pressure builds.',
    remedy: 'Mount the pump lower than the tank’s outlet, with a short, wide suction line.',
  },
  'tank-away-from-heat': {
    question: 'Do tank and lines stay away from exhaust, turbo and other hot parts?',
    reason: 'Warm alcohol gives off vapour that burns; a leak on a hot part is a fire.',
    remedy: 'Move or shield them, and lead the vent outdoors.',
  },
  'filter-before-nozzle': {
    question: 'Is there a filter between tank and nozzle that is finer than the nozzle’s hole?',
    reason:
      'One grain clogs a nozzle, and a clogged nozzle looks like a working one until the engine knocks.',
    remedy: 'Fit a filter before the pump, and one before a fine nozzle.',
  },
  'hoses-pressure-tested': {
    question: 'Are all hose fittings tight, and has the line held full pump pressure for minutes?',
    reason: 'A fitting that lets go sprays fluid over the hot engine.',
    remedy: 'Cut hoses square, seat them fully, hold the pressure and dry every joint with a cloth.',
  },
  'fuse-and-relay': {
    question: 'Has the pump its own fuse and relay, sized for its current?',
    reason: 'A stalled pump draws several times its current: without a fuse the cable burns.',
    remedy: 'Fuse it close to the battery, for the pump’s rated current, with cable to match.',
  },
  'ignition-only': {
    question: 'Has the pump power only while the ignition is on?',
    reason: 'A pump that runs with the engine off fills the intake.',
    remedy: 'Switch its relay from the ignition.',
  },
  'primed-and-measured': {
    question: 'Has the system been primed, and its flow measured into a bottle?',
    reason: 'Only the bottle tells what really arrives; ratings and labels don’t.',
    remedy: 'Spray into a measuring bottle for a noted time, at two settings or more, and enter it.',
  },
  'low-level-warning': {
    question: 'Does a warning tell when fluid runs low, where the driver sees it?',
    reason: 'The pull after running dry is the one that breaks the engine.',
    remedy: 'Fit a level switch with a light, with two pulls or more in reserve.',
  },
  'fail-safe-wired': {
    question:
      'Do boost and spark fall back by themselves when flow or pressure is missing, within a few tenths of a second?',
    reason: 'The knock limit is lost at once with the fluid; no driver is quick enough.',
    remedy: 'Wire flow or pressure to the ECU or boost control, with the guard band as limits.',
  },
  'fail-safe-proven': {
    question: 'Has the fallback been seen to come in, with the pump’s fuse pulled at low boost?',
    reason: 'A protection that was never tried is a hope.',
    remedy: 'Pull the fuse at low boost, on a dyno or closed road, and watch boost and spark fall back.',
  },
  materials: {
    question: 'Are tank, pump, seals, hoses and nozzle made for alcohol?',
    reason: 'Alcohol swells some rubbers, cracks some plastics and attacks bare aluminium and zinc.',
    remedy: 'Ask the maker for each part; polyethylene, PTFE, stainless steel and nickel-plated brass last.',
  },
  storage: {
    question:
      'Is the fluid kept closed and labelled, vented outdoors, away from flame and sparks, in an amount that local law allows?',
    reason: 'Half alcohol lights at room temperature, and a methanol flame can’t be seen by day.',
    remedy: 'Store it like petrol. The fluid sheet shows its flash point: go by the cautious one.',
  },
  'out-of-the-cabin': {
    question: 'Are tank and lines outside the cabin, or sealed off and vented outdoors?',
    reason: 'Vapour of alcohol, of methanol above all, poisons people in a closed car.',
    remedy: 'Move the tank out of the cabin, or box it in with a vent to the outside.',
  },
  'gloves-and-goggles': {
    question: 'Does everyone who fills or opens the system wear gloves and goggles, in open air?',
    reason: 'Methanol goes through skin; small amounts blind or kill, and it is late when one feels it.',
    remedy: 'Nitrile or butyl gloves, goggles, open air; water at hand. Swallowed: a doctor at once.',
  },
  'clean-water': {
    question: 'Is the water demineralised or distilled?',
    reason: 'Lime from tap water stays in nozzle and valves.',
    remedy: 'Use demineralised water only.',
  },
  'boost-leak-test': {
    question: 'Has the intake been leak-tested under boost, nozzle boss included?',
    reason: 'A leak moves boost and mixture, and mist comes out where it should not.',
    remedy: 'Press the intake to peak boost with air and listen, before the first pull.',
  },
  'sensors-plausible': {
    question: 'Do wideband and knock sensor give plausible readings?',
    reason: 'They are what stops the ladder: a blind one stops nothing.',
    remedy: 'Check the wideband in free air, and the knock sensor’s noise over engine speed.',
  },
};
