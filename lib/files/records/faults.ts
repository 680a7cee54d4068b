import { DEEPEST_M, SHORTEST_S } from '../../dive/bounds';
import { FASTEST_M_MIN } from '../../dive/script/leg-rate';
import { tidy } from '../../quantity/number';
import type { Recording } from './record';

/**
 * What can be wrong with a sample. `spike` is a reading that leaps away and comes back; `jump` one that cannot be
 * reached from the last good one at all; `restart` where the time begins again as if for another dive.
 */
export type Fault = 'unreadable' | 'restart' | 'backwards' | 'repeat' | 'negative' | 'tooDeep' | 'jump' | 'spike';

/** A record may not hold these when a dive is made of it. A spike may stay: it is unlikely, not impossible. */
export const BLOCKING: ReadonlySet<string> = new Set([
  'unreadable',
  'restart',
  'backwards',
  'repeat',
  'negative',
  'tooDeep',
  'jump',
  'start',
  'gas',
]);

/** Faults whose samples a repair leaves out. */
export const LEFT_OUT: ReadonlySet<Fault> = new Set<Fault>([
  'unreadable',
  'backwards',
  'repeat',
  'tooDeep',
  'jump',
  'spike',
]);

/** A leap smaller than this is taken for the coarseness of the sensor, m. */
const COARSE_M = 1;
/** A leap there and back, each faster than this, is a spike, m/min. No diver turns round that fast; a teaching figure of ours. */
const SPIKE_M_MIN = 60;
const SPIKE_M = 3;
/** Samples a spike may last. */
const LONGEST_SPIKE = 3;
/** Shallower than this a diver counts as back at the surface, m. */
export const AT_SURFACE_M = 1.5;
/** A dive begins again within so long of where the clock began, and not before so much of the last one. */
const RESTART_WITHIN_S = 60;
const SHORTEST_DIVE_S = 120;

/**
 * Walks a recording from its beginning and calls `visit` with every fault and the index it is at, each sample at most
 * once but for a negative depth. A faulty sample is no measure for those after it; a negative depth counts as the surface.
 */
export function walkFaults({ timeS, depthM }: Recording, visit: (fault: Fault, index: number) => void): void {
  let lastS = NaN;
  let lastM = NaN;
  let firstS = NaN;
  let spikeEnd = 0;
  const { length } = timeS;
  for (let i = 0; i < length; i += 1) {
    const time = timeS[i]!;
    let depth = depthM[i]!;
    if (!Number.isFinite(time) || !Number.isFinite(depth)) {
      visit('unreadable', i);
      continue;
    }
    if (i < spikeEnd) {
      visit('spike', i);
      continue;
    }
    if (time >= lastS && tidy(time - lastS) < SHORTEST_S) {
      visit('repeat', i);
      continue;
    }
    if (time < lastS) {
      const atSurface = depth <= AT_SURFACE_M && lastM <= AT_SURFACE_M;
      if (atSurface && time <= firstS + RESTART_WITHIN_S && lastS >= time + SHORTEST_DIVE_S) {
        visit('restart', i);
        firstS = time;
      } else {
        visit('backwards', i);
        continue;
      }
    }
    if (depth < 0) {
      visit('negative', i);
      depth = 0;
    }
    if (depth > DEEPEST_M) {
      visit('tooDeep', i);
      continue;
    }
    const leapM = Math.abs(depth - lastM);
    if (leapM > COARSE_M && time > lastS) {
      const rate = (leapM * 60) / (time - lastS);
      if (rate > FASTEST_M_MIN) {
        visit('jump', i);
        continue;
      }
      spikeEnd = rate > SPIKE_M_MIN && leapM > SPIKE_M ? comesBackAt(timeS, depthM, i, lastM) : 0;
      if (spikeEnd > i) {
        visit('spike', i);
        continue;
      }
    }
    if (!(firstS <= time)) firstS = time;
    lastS = time;
    lastM = depth;
  }
}

/** The sample at which the depth is back, as fast, near where it was; 0 if it is not within a few samples. */
function comesBackAt(timeS: Float64Array, depthM: Float64Array, at: number, fromM: number): number {
  const leapM = depthM[at]! - fromM;
  for (let i = at + 1; i <= at + LONGEST_SPIKE && i < timeS.length; i += 1) {
    if (!(Math.abs(depthM[i]! - fromM) <= Math.abs(leapM) / 3)) continue;
    const backM = depthM[i - 1]! - depthM[i]!;
    const asFast = (Math.abs(backM) * 60) / (timeS[i]! - timeS[i - 1]!) > SPIKE_M_MIN;
    return asFast && Math.sign(backM) === Math.sign(leapM) ? i : 0;
  }
  return 0;
}
