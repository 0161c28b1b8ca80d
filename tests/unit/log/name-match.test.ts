import { describe, expect, it } from 'vitest';
import { matchName } from '../../../core/log/name-match.ts';

const first = (name: string) => matchName(name)[0]?.quantity ?? null;

const names: Record<string, string[]> = {
  time: ['Time', 'Zeit', 'Tiempo', 'Temps', 'Timestamp', 't'],
  engineSpeed: [
    'RPM',
    'Engine Speed',
    'EngineRPM',
    'engine_speed',
    'Motordrehzahl',
    'Drehzahl',
    'Régime moteur',
    'Régimen del motor',
    'Velocidad motor',
  ],
  vehicleSpeed: [
    'Vehicle Speed',
    'Speed',
    'Geschwindigkeit',
    'Fahrzeuggeschwindigkeit',
    'Vitesse véhicule',
    'Velocidad del vehículo',
  ],
  gpsSpeed: ['GPS Speed', 'GPS-Geschwindigkeit', 'Velocidad GPS'],
  gear: ['Gear', 'Gang', 'Marcha', 'Rapport'],
  pedal: [
    'Pedal',
    'Accelerator Pedal Position',
    'Gaspedalstellung',
    'Position pédale',
    'Posición pedal acelerador',
  ],
  throttle: [
    'Throttle',
    'TPS',
    'Throttle Position',
    'Drosselklappe',
    'Drosselklappenwinkel',
    'Position papillon',
    'Mariposa',
  ],
  manifoldPressure: [
    'MAP',
    'Manifold Absolute Pressure',
    'Saugrohrdruck',
    'Pression collecteur',
    'Presión colector',
  ],
  boost: [
    'Boost',
    'Boost Pressure',
    'Ladedruck',
    'Pression de suralimentation',
    'Presión de sobrealimentación',
  ],
  boostTarget: ['Boost target', 'Ladedruck Soll', 'Boost requested', 'Consigne pression turbo'],
  barometricPressure: ['Barometric pressure', 'Umgebungsdruck', 'Luftdruck', 'Presión atmosférica'],
  wastegateDuty: ['Wastegate duty', 'Boost control duty'],
  sparkAdvance: ['Spark advance', 'Ignition timing', 'Zündwinkel', "Avance à l'allumage", 'Avance encendido'],
  knockRetard: ['Knock retard', 'Klopfrücknahme', 'Zündwinkelrücknahme Klopfen'],
  knockLevel: ['Knock level', 'Klopfpegel'],
  knockCount: ['Knock count', 'Klopfzähler'],
  lambda: ['Lambda', 'AFR', 'Air/Fuel ratio', 'Wideband', 'Lambda 1'],
  lambdaTarget: ['Lambda target', 'AFR target', 'Lambda Soll'],
  intakeTemperature: [
    'IAT',
    'Intake air temperature',
    'Ansauglufttemperatur',
    'Ladelufttemperatur',
    "Température d'admission",
    'Temperatura de admisión',
  ],
  ambientTemperature: ['Ambient temp', 'Außentemperatur', 'Outside air temperature'],
  coolantTemperature: [
    'Coolant temp',
    'ECT',
    'Kühlmitteltemperatur',
    'Wassertemperatur',
    'Température liquide de refroidissement',
    'Temperatura refrigerante',
  ],
  oilTemperature: ['Oil temp', 'Öltemperatur', 'Temperatura aceite', "Température d'huile"],
  exhaustTemperature: ['EGT', 'Exhaust gas temperature', 'Abgastemperatur'],
  airMassFlow: ['MAF', 'Mass air flow', 'Luftmassenstrom', "Débit d'air"],
  injectorDuty: ['Injector duty', 'Injector duty cycle'],
  injectorTime: ['Injector pulse width', 'Einspritzzeit', "Temps d'injection", 'Tiempo de inyección'],
  fuelPressure: ['Fuel pressure', 'Kraftstoffdruck', 'Fuel rail pressure'],
  fuelTrimShort: ['STFT', 'Short term fuel trim'],
  fuelTrimLong: ['LTFT', 'Long term fuel trim'],
  fluidFlow: ['Water injection flow', 'Spray flow', 'Methanol flow', 'Wassereinspritzung Durchfluss'],
  fluidPressure: ['Fluid pressure', 'Methanol pressure'],
  wheelPower: ['Wheel power', 'Radleistung'],
  enginePower: ['Power', 'Motorleistung', 'Puissance moteur'],
  engineTorque: ['Torque', 'Drehmoment', 'Couple moteur', 'Par motor'],
};

describe.each(Object.entries(names))('%s', (quantity, spellings) => {
  it.each(spellings)('is told by “%s”', (name) => {
    expect(first(name)).toBe(quantity);
  });
});

it.each([
  'Oil pressure',
  'Öldruck',
  'Gear ratio',
  'Turbo speed (target)',
  'Boost error',
  'Gearbox temp',
  'Clutch',
  'Brake pressure',
  'Cam timing',
  'Steering angle',
])('“%s” is none of ours', (name) => {
  expect(first(name)).toBeNull();
});
