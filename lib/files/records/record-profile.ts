import { sameGas } from '../../physics/gas';
import type { GasSwitch, Recording } from './record';

/** A recording ready to be made into steps: it begins at the surface and its times only rise. */
export interface RecordProfile {
  readonly timeS: Float64Array;
  readonly depthM: Float64Array;
  readonly switches: readonly GasSwitch[];
  /** Samples that must stay: where the gas changes and where surface intervals begin and end. */
  readonly pins: readonly number[];
  /** Samples at which a surface interval begins; it ends at the next pin. */
  readonly surface: ReadonlySet<number>;
}

/** A stay at the surface from so long on is a surface interval, s: common practice, no single source. */
const INTERVAL_FROM_S = 600;
/** As deep as a unit at the surface may read, m. */
const AFLOAT_M = 0.5;

/**
 * Turns a recording without blocking faults into a profile. A first sample below the surface gets the surface at time 0
 * before it; a long stay at the surface after the dive has begun becomes a surface interval at 0 m; a gas change belongs
 * to the first sample at or after it.
 */
export function profileOf(recording: Recording): RecordProfile {
  const submerged = recording.depthM[0]! > 0;
  const timeS = submerged ? prepended(recording.timeS) : recording.timeS;
  const depthM = submerged ? prepended(recording.depthM) : recording.depthM.slice();
  const pins: number[] = [];
  const surface = new Set<number>();
  const stretches = surfaceStretches(timeS, depthM);
  for (const [from, to] of stretches) {
    depthM.fill(0, from, to + 1);
    pins.push(from, to);
    surface.add(from);
  }
  const switches: GasSwitch[] = [];
  const told = [...recording.switches].sort((one, other) => one.timeS - other.timeS);
  for (const { timeS: at, gas } of told) {
    let sample = firstAtOrAfter(timeS, at);
    if (sample >= timeS.length) break;
    // A change made while at the surface counts when the next dive begins.
    sample = stretches.find(([from, to]) => sample > from && sample < to)?.[1] ?? sample;
    const last = switches.at(-1);
    if (last && sameGas(last.gas, gas)) continue;
    // Two changes between two samples: the later one is what is breathed.
    if (last && last.timeS === timeS[sample]) switches.pop();
    switches.push({ timeS: timeS[sample]!, gas });
    pins.push(sample);
  }
  return { timeS, depthM, switches, pins, surface };
}

function prepended(values: Float64Array): Float64Array {
  const wider = new Float64Array(values.length + 1);
  wider.set(values, 1);
  return wider;
}

function surfaceStretches(timeS: Float64Array, depthM: Float64Array): [number, number][] {
  const stretches: [number, number][] = [];
  let from = -1;
  let dived = false;
  for (let i = 0; i <= timeS.length; i += 1) {
    if (i < timeS.length && depthM[i]! <= AFLOAT_M) {
      if (from < 0) from = i;
      continue;
    }
    if (dived && from >= 0 && timeS[i - 1]! - timeS[from]! >= INTERVAL_FROM_S) stretches.push([from, i - 1]);
    from = -1;
    dived = true;
  }
  return stretches;
}

function firstAtOrAfter(timeS: Float64Array, at: number): number {
  let low = 0;
  let high = timeS.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timeS[middle]! < at) low = middle + 1;
    else high = middle;
  }
  return low;
}
