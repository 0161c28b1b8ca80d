import { describe, expect, it } from 'vitest';
import { risingSpans } from '../../../../core/log/rises/rising-spans.ts';
import { speedRatio } from '../../../../core/log/speeds/speed-ratio.ts';

const rate = 20;
const rpm = Math.PI / 30;

/** Engine and road speed over 30 s: `before` for 8 s, then a pull from 2,500 to 6,100 rpm from 10 to 18 s, in third. */
function driven(before: (t: number) => { rpm: number; speed: number }) {
  const time = Float64Array.from({ length: 30 * rate }, (_, i) => i / rate);
  const third = 0.0068 / rpm;
  const at = (t: number) => {
    if (t < 8) return before(t);
    const n = t < 10 ? 2500 : t < 18 ? 2500 + 450 * (t - 10) : Math.max(1500, 6100 - 900 * (t - 18));
    return { rpm: n, speed: n * rpm * third };
  };
  const engineSpeed = time.map((t) => at(t).rpm * rpm);
  const ratio = speedRatio(
    engineSpeed,
    time.map((t) => at(t).speed),
  );
  return { engineSpeed, ratio, boost: null, time, segments: [{ from: 0, to: time.length }] };
}

const spansOf = (signals: ReturnType<typeof driven>, isRoadKnown: boolean) =>
  risingSpans({ ...signals, ratio: isRoadKnown ? signals.ratio : null }).map(({ from, to }) => [
    (signals.time[from] ?? 0).toFixed(0),
    (signals.time[to - 1] ?? 0).toFixed(0),
  ]);

/** The engine turned up in neutral within 1.2 s, as on a cold start or to be heard. */
const blip = (t: number) =>
  t < 2 ? 900 : t < 3.2 ? 900 + 3500 * (t - 2) : Math.max(900, 5100 - 2000 * (t - 3.2));

describe('full throttle by acceleration alone', () => {
  it.each([true, false])(
    'is found beside a blip in neutral while the car stands (road speed known: %s)',
    (known) => {
      expect(
        spansOf(
          driven((t) => ({ rpm: blip(t), speed: 0 })),
          known,
        ),
      ).toEqual([['10', '18']]);
    },
  );

  it('is found beside a blip in neutral while the car rolls', () => {
    expect(
      spansOf(
        driven((t) => ({ rpm: blip(t), speed: 12 })),
        true,
      ),
    ).toEqual([['10', '18']]);
  });

  it('is found in a file that begins with a leap', () => {
    // The file begins as the clutch takes: one row far below, then a second of creeping on.
    const leap = (t: number) => ({ rpm: t < 0.05 ? 2000 : 2700 + 170 * Math.min(t, 1), speed: 14 });
    expect(spansOf(driven(leap), true)).toEqual([['10', '18']]);
  });
});
