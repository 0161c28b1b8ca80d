import { describe, expect, it } from 'vitest';
import { clockSeconds, stampSeconds } from '../../../../core/log/table/clock.ts';

describe('clock times', () => {
  it.each([
    ['01:02:03.5', 3723.5],
    ['00:00:12.345', 12.345],
    ['14:03:12,345', 50592.345],
    ['14:03:12:345', 50592.345],
    ['3:12.5', 192.5],
    ['2:03:12 pm', 50592],
    ['2:03:12 p. m.', 50592],
    ['2:03:12\u00a0p.\u00a0m.', 50592],
    ['12:00:00 am', 0],
    ['-0:01.5', -1.5],
    ['100:00:00', 360000],
  ])('%s is %d s', (text, seconds) => {
    expect(clockSeconds(text)).toBe(seconds);
  });

  it.each(['', '12', '12.5', '1:2:3:4:5', 'noon', '10:75:00', '10:10:99'])('“%s” is none', (text) => {
    expect(clockSeconds(text)).toBeNaN();
  });
});

describe('dates with time', () => {
  const seconds = Date.UTC(2027, 2, 14, 10, 15, 0) / 1000;
  it.each([
    ['2027-03-14T10:15:00Z', seconds],
    ['2027-03-14T10:15:00.250+02:00', seconds + 0.25],
    ['2027-03-14 10:15:00,5', seconds + 0.5],
    ['20270314T101500', seconds],
    ['14.03.2027 10:15:00', seconds],
    ['14/03/2027 10:15:00', seconds],
    ['3/14/2027 10:15:00', seconds],
    ['2027/03/14 10:15:00', seconds],
    ['03/14/2027 10:15:00.250 AM', seconds + 0.25],
    ['14-Mar-2027 10:15:00', seconds],
    ['March 14, 2027 10:15:00.5', seconds + 0.5],
    ['14. März 2027 10:15:00', seconds],
    ['14 mars 2027 10:15:00', seconds],
    ['2027-03-14T10:15:00 UTC', seconds],
    ['3/14/2027 10:15:00 PM', seconds + 43_200],
    ['5/7/2027 12:00:00 am', Date.UTC(2027, 4, 7) / 1000],
    ['1970-01-02T00:00:01', 86_401],
  ])('%s', (text, expected) => {
    expect(stampSeconds(text)).toBe(expected);
  });

  it.each(['2027-13-14T10:15:00', '2027-03-14', '10:15:00', ''])('“%s” is none', (text) => {
    expect(stampSeconds(text)).toBeNaN();
  });
});
