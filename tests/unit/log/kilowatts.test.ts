import { describe, expect, it } from 'vitest';
import { parseUnit } from '../../../core/log/columns/unit-words.ts';

describe('kilowatts', () => {
  it.each(['kW', 'KW', 'kw', 'kilowatt'])('%s are power', (text) => {
    expect(parseUnit(text)?.unit).toBe('kW');
  });

  it.each(['°KW', '° KW', 'Grad KW', 'degKW'])('%s is an angle of the crank', (text) => {
    expect(parseUnit(text)?.unit).toBe('deg');
  });
});
