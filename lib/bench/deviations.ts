import type { BenchSettings, Readings } from './bench-settings';
import type { Expected } from './expected';

/** How a depth reading stands to the tolerance stated. */
type Standing = 'in' | 'out' | 'not judged' | 'nothing shown' | 'not read';

export interface DepthDeviation {
  readonly expected: Expected;
  readonly standing: Standing;
  /** Undefined where no figure was shown or read. */
  readonly shownM: number | undefined;
  /** Shown less expected, m. */
  readonly deviationM: number | undefined;
  /** Undefined while no tolerance is stated. */
  readonly allowedM: number | undefined;
}

/** Readings are taken to be exact decimals: so much is the dust of binary fractions, m. */
const DUST_M = 1e-9;

/** The deviation the stated tolerance allows at a depth, m; undefined while none is stated. */
export function allowedAtM(
  { toleranceM, tolerancePercent }: Pick<BenchSettings, 'toleranceM' | 'tolerancePercent'>,
  depthM: number,
): number | undefined {
  if (toleranceM === null && tolerancePercent === null) return undefined;
  return (toleranceM ?? 0) + ((tolerancePercent ?? 0) / 100) * depthM;
}

/** Every checkpoint's depth reading against what a correct unit shows. */
export function depthDeviations(
  expected: readonly Expected[],
  readings: Readings,
  settings: BenchSettings,
): DepthDeviation[] {
  return expected.map((one) => {
    const shown = readings[one.checkpoint.name]?.depthM;
    const allowedM = allowedAtM(settings, one.depthM);
    if (shown === undefined || shown === 'nothing') {
      // At the surface a unit may well show no depth.
      const standing = shown === undefined || one.gaugeM === 0 ? 'not read' : 'nothing shown';
      return { expected: one, standing, shownM: undefined, deviationM: undefined, allowedM };
    }
    const deviationM = shown - one.depthM;
    const standing = allowedM === undefined ? 'not judged' : Math.abs(deviationM) <= allowedM + DUST_M ? 'in' : 'out';
    return { expected: one, standing, shownM: shown, deviationM, allowedM };
  });
}

/** One depth of the gauge, read on the way in and again on the way out. */
export interface Hysteresis {
  readonly gaugeM: number;
  readonly down: DepthDeviation;
  readonly up: DepthDeviation;
  /** Reading on the way out less that on the way in, m. */
  readonly differenceM: number;
}

const SAME_GAUGE_M = 0.005;

/** Depths read both ways: the last reading on the way in against the first on the way out. */
export function hysteresisOf(deviations: readonly DepthDeviation[]): Hysteresis[] {
  const pairs: Hysteresis[] = [];
  deviations.forEach((up, index) => {
    if (up.expected.checkpoint.way !== 'up' || up.shownM === undefined) return;
    const { gaugeM } = up.expected;
    if (pairs.some((pair) => Math.abs(pair.gaugeM - gaugeM) < SAME_GAUGE_M)) return;
    const down = deviations
      .slice(0, index)
      .findLast(
        ({ expected, shownM }) =>
          expected.checkpoint.way === 'down' &&
          shownM !== undefined &&
          Math.abs(expected.gaugeM - gaugeM) < SAME_GAUGE_M,
      );
    if (down) pairs.push({ gaugeM, down, up, differenceM: up.shownM - down.shownM! });
  });
  return pairs;
}

/** The first and the last reading of one hold. */
export interface Drift {
  readonly gaugeM: number;
  readonly from: DepthDeviation;
  readonly to: DepthDeviation;
  readonly overS: number;
  /** Last reading less the first, m. */
  readonly driftM: number;
}

/** Holds read at least twice. A hold lasts until the pressure changes. */
export function driftOf(deviations: readonly DepthDeviation[]): Drift[] {
  const drifts: Drift[] = [];
  let first: DepthDeviation | undefined;
  let last: DepthDeviation | undefined;
  const close = () => {
    if (first && last && first !== last) {
      drifts.push({
        gaugeM: first.expected.gaugeM,
        from: first,
        to: last,
        overS: last.expected.timeS - first.expected.timeS,
        driftM: last.shownM! - first.shownM!,
      });
    }
  };
  for (const one of deviations) {
    const { way, hold } = one.expected.checkpoint;
    if (one.shownM === undefined || way === 'surface') continue;
    if (first?.expected.checkpoint.hold !== hold) {
      close();
      first = one;
    }
    last = one;
  }
  close();
  return drifts;
}
