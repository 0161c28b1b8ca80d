import { degrees } from '../../units/index.ts';
import { gridOver, onGrid } from '../band/grid.ts';
import type { PullEvidence } from '../evidence/pull-evidence.ts';
import { median } from '../statistics/index.ts';

/** What spoils a pull as a measurement of its setup. */
export type Trouble =
  | { readonly kind: 'knock'; readonly retard_rad: number }
  | { readonly kind: 'limiter' | 'intervention' | 'wheel-spin' };

type Banded = { readonly pull: PullEvidence; readonly band: readonly [number, number] };

/** Retard in a third of the band beyond what these pulls usually show (common practice: half a degree counts). */
const retardLimit_rad = degrees(0.75);
/** Engine speed ahead of the road beyond what these pulls usually show there (practice: slip is 1 to 3 %). */
const spinLimit = 0.04;
/** Share of the band that must be touched before a pull is in trouble: one sample may be a glitch. */
const touchedShare = 0.04;

/**
 * Which of these pulls are in trouble. Retard and slip are judged against the calmest half of all pulls, so
 * that a steady background counts as how this car is and not as an event.
 */
export function troublesOf(pulls: readonly Banded[]): Map<PullEvidence, readonly Trouble[]> {
  const retards = new Map(pulls.map((p) => [p.pull, worstThirdRetard(p)]));
  const known = [...retards.values()].filter(Number.isFinite).sort((a, b) => a - b);
  const calm = known.length > 0 ? median(known.slice(0, Math.ceil(known.length / 2))) : 0;
  const spins = spinning(pulls);
  return new Map(
    pulls.map((p) => {
      const troubles: Trouble[] = [];
      const retard = retards.get(p.pull) ?? Number.NaN;
      if (retard - calm > retardLimit_rad) troubles.push({ kind: 'knock', retard_rad: retard });
      if (touched(p, 'limiterActive') > touchedShare) troubles.push({ kind: 'limiter' });
      if (touched(p, 'tractionControl') > touchedShare || isInterfered(p.pull)) {
        troubles.push({ kind: 'intervention' });
      }
      if (spins.has(p.pull) || hasFlag(p.pull, 'log/pull-wheel-spin')) troubles.push({ kind: 'wheel-spin' });
      return [p.pull, troubles];
    }),
  );
}

/** The pull finder saw control take torque away. */
export function isInterfered(pull: PullEvidence): boolean {
  return hasFlag(pull, 'log/pull-intervention');
}

function hasFlag(pull: PullEvidence, code: string): boolean {
  return pull.flags.some((flag) => flag.code === code);
}

/**
 * Engine speed at which a limiter near the top of the pull came in: the band ends there, and the pull is sound
 * below. Null where none did, or where it came in further down.
 */
export function limitedFrom(pull: PullEvidence, band: readonly [number, number]): number | null {
  const active = pull.curves.limiterActive;
  if (!active) return null;
  const top = band[1] - 0.2 * (band[1] - band[0]);
  const speed = pull.power.engineSpeed_rad_s;
  for (let i = 0; i < speed.length; i++) {
    if ((active[i] as number) > 0.5 && (speed[i] as number) <= band[1]) {
      return (speed[i] as number) >= top ? (speed[Math.max(0, i - 1)] as number) : null;
    }
  }
  return null;
}

function touched({ pull, band }: Banded, quantity: 'limiterActive' | 'tractionControl'): number {
  const curve = pull.curves[quantity];
  if (!curve) return 0;
  const grid = gridOver(band);
  const values = onGrid(pull.power.engineSpeed_rad_s, curve, grid);
  return values.reduce((n, v) => n + (v > 0.5 ? 1 : 0), 0) / values.length;
}

function worstThirdRetard({ pull, band }: Banded): number {
  const curve = pull.curves.knockRetard;
  if (!curve) return Number.NaN;
  const values = onGrid(pull.power.engineSpeed_rad_s, curve, gridOver(band));
  const third = values.length / 3;
  let worst = Number.NaN;
  for (let r = 0; r < 3; r++) {
    const part = values.subarray(Math.round(r * third), Math.round((r + 1) * third)).filter(Number.isFinite);
    if (part.length === 0) continue;
    const level = part.reduce((sum, v) => sum + Math.abs(v), 0) / part.length;
    if (!(level <= worst)) worst = level;
  }
  return worst;
}

/** Pulls whose engine ran ahead of the road more than the middle of all pulls at the same engine speed. */
function spinning(pulls: readonly Banded[]): Set<PullEvidence> {
  const found = new Set<PullEvidence>();
  const withSpeed = pulls.filter((p) => p.pull.curves.vehicleSpeed);
  if (withSpeed.length < 3) return found;
  const low = Math.max(...withSpeed.map((p) => p.band[0]));
  const high = Math.min(...withSpeed.map((p) => p.band[1]));
  if (!(high > low)) return found;
  const grid = gridOver([low, high]);
  const ratios = withSpeed.map((p) => {
    const speed = onGrid(p.pull.power.engineSpeed_rad_s, p.pull.curves.vehicleSpeed as Float64Array, grid);
    return grid.engineSpeed_rad_s.map((w, k) => w / (speed[k] as number));
  });
  const middle = grid.engineSpeed_rad_s.map((_, k) =>
    median(ratios.map((r) => r[k] as number).filter(Number.isFinite)),
  );
  withSpeed.forEach((p, i) => {
    const ratio = ratios[i] as Float64Array;
    const ahead = ratio.reduce((n, v, k) => n + (v / (middle[k] as number) - 1 > spinLimit ? 1 : 0), 0);
    if (ahead / ratio.length > touchedShare) found.add(p.pull);
  });
  return found;
}
