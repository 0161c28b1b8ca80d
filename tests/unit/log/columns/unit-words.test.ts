import { describe, expect, it } from 'vitest';
import { headerParts } from '../../../../core/log/columns/header-unit.ts';
import { parseUnit } from '../../../../core/log/columns/unit-words.ts';
import { units } from '../../../../core/units/index.ts';

describe('unit texts', () => {
  it.each([
    ['1/min', 'rpm'],
    ['U/min', 'rpm'],
    ['tr/min', 'rpm'],
    ['min⁻¹', 'rpm'],
    ['°C', 'C'],
    ['deg C', 'C'],
    ['ºF', 'F'],
    ['℃', 'C'],
    ['km/u', 'km/h'],
    ['°', 'deg'],
    ['° BTDC', 'deg'],
    ['°KW', 'deg'],
    ['km/h', 'km/h'],
    ['kph', 'km/h'],
    ['MPH', 'mph'],
    ['lb-ft', 'lb ft'],
    ['N·m', 'Nm'],
    ['kgf·m', 'kgf m'],
    ['kgf・m', 'kgf m'],
    ['kg-m', 'kgf m'],
    ['mkg', 'kgf m'],
    ['ft·lb', 'lb ft'],
    ['whp', 'hp'],
    ['kgf/cm²', 'kgf/cm2'],
    ['in.Hg', 'inHg'],
    ['m/s²', 'm/s2'],
    ['λ', 'lambda'],
    ['A/F', 'AFR'],
    ['µs', 'us'],
    ['%', '%'],
    ['[kPa]', 'kPa'],
    ['l/min', 'L/min'],
    ['cc/min', 'cc/min'],
    ['PS', 'PS'],
    ['cv', 'PS'],
    ['bhp', 'hp'],
    ['sec', 's'],
    ['kg/h', 'kg/h'],
    ['lb/min', 'lb/min'],
  ])('%s is %s', (text, unit) => {
    expect(parseUnit(text)?.unit).toBe(unit);
    expect(units.has(unit)).toBe(true);
  });

  it.each([
    ['psig', 'psi', 'gauge'],
    ['psia', 'psi', 'absolute'],
    ['bar abs', 'bar', 'absolute'],
    ['bar (rel.)', 'bar', 'gauge'],
    ['kPa(a)', 'kPa', 'absolute'],
    ['mbar absolut', 'mbar', 'absolute'],
  ])('%s also says which pressure', (text, unit, reference) => {
    expect(parseUnit(text)).toEqual({ unit, reference });
  });

  it.each(['quux', 'Boost', '12'])('“%s” is none', (text) => {
    expect(parseUnit(text)).toBeNull();
  });
});

describe('headers', () => {
  it.each([
    ['Boost [psi]', 'Boost', 'psi'],
    ['Coolant (°C)', 'Coolant', 'C'],
    ['speed_km_h', 'speed', 'km/h'],
    ['fluid_mL_min', 'fluid', 'mL/min'],
    ['Zeit in s', 'Zeit', 's'],
    ['Throttle %', 'Throttle', '%'],
    ['RPM', 'RPM', 'rpm'],
    ['Coolant C', 'Coolant', 'C'],
    ['Boost, kPa', 'Boost', 'kPa'],
    ['Pressure (psig) front', 'Pressure front', 'psi'],
  ])('%s', (header, name, unit) => {
    const parts = headerParts(header);
    expect(parts.name).toBe(name);
    expect(parts.unit?.unit).toBe(unit);
  });

  it('keep what is no unit in the name', () => {
    expect(headerParts('Lambda (bank 1)')).toMatchObject({ name: 'Lambda (bank 1)', unit: null });
  });
});
