import type { GradientFactors } from '../dive/dive';
import { gasAt, type Timeline } from '../dive/timeline';
import { COMPARTMENTS } from '../tissue/coefficients';
import { breathedAt } from './breathed';
import { lineDepthBar } from './ceiling';
import { legSamples } from './leg-samples';
import { noStop, SEARCHED_MIN, type NoStop } from './no-stop';

/** The ceiling of every sample of a timeline with helium; as `nitrogenCeilings` otherwise. */
export function mixedGasCeilings(timeline: Timeline, gf: number, ceilingM: Float64Array, leaders?: Uint8Array): void {
  const { length, nitrogenBar, heliumBar, surfaceBar, barPerMetre, compartments } = timeline;
  const { nitrogenA, nitrogenB, heliumA, heliumB } = compartments;
  const leastBar = leastSurfaceLimits(timeline, gf);
  const count = COMPARTMENTS;
  for (let i = 0; i < length; i += 1) {
    let deepestBar = surfaceBar;
    let leader = 0;
    for (let c = 0; c < count; c += 1) {
      const nitrogen = nitrogenBar[i * count + c]!;
      const helium = heliumBar[i * count + c]!;
      const inert = nitrogen + helium;
      if (inert < leastBar[c]!) continue;
      const a = (nitrogenA[c]! * nitrogen + heliumA[c]! * helium) / inert;
      const b = (nitrogenB[c]! * nitrogen + heliumB[c]! * helium) / inert;
      const toleratedBar = (inert - a * gf) / (gf / b - gf + 1);
      if (toleratedBar > deepestBar) {
        deepestBar = toleratedBar;
        leader = c + 1;
      }
    }
    ceilingM[i] = (deepestBar - surfaceBar) / barPerMetre;
    if (leaders) leaders[i] = leader;
  }
}

/** The ceiling of every sample on the line from low to high; as `nitrogenCeilingsOnLine` otherwise. */
export function mixedGasCeilingsOnLine(
  timeline: Timeline,
  gf: GradientFactors,
  anchorM: Float64Array,
  ceilingM: Float64Array,
  leaders: Uint8Array,
): void {
  const { length, nitrogenBar, heliumBar, surfaceBar, barPerMetre, compartments } = timeline;
  const { nitrogenA, nitrogenB, heliumA, heliumB } = compartments;
  const leastBar = leastSurfaceLimits(timeline, gf.high);
  const count = COMPARTMENTS;
  for (let i = 0; i < length; i += 1) {
    let deepestBar = 0;
    let leader = 0;
    const anchorBar = anchorM[i]! * barPerMetre;
    for (let c = 0; c < count && anchorBar > 0; c += 1) {
      const nitrogen = nitrogenBar[i * count + c]!;
      const helium = heliumBar[i * count + c]!;
      const inert = nitrogen + helium;
      if (inert < leastBar[c]!) continue;
      const a = (nitrogenA[c]! * nitrogen + heliumA[c]! * helium) / inert;
      const b = (nitrogenB[c]! * nitrogen + heliumB[c]! * helium) / inert;
      const ownBar = lineDepthBar(inert, a, b, gf, surfaceBar, anchorBar);
      if (ownBar > deepestBar) {
        deepestBar = ownBar;
        leader = c + 1;
      }
    }
    ceilingM[i] = Math.min(deepestBar / barPerMetre, anchorM[i]!);
    leaders[i] = leader;
  }
}

/** The least that each compartment tolerates at the surface under `gf`, whatever the mixture it holds, bar. */
function leastSurfaceLimits({ compartments, surfaceBar }: Timeline, gf: number): Float64Array {
  const { nitrogenA, nitrogenB, heliumA, heliumB } = compartments;
  return nitrogenA.map(
    (a, c) =>
      surfaceBar + gf * (Math.min(a, heliumA[c]!) + surfaceBar / Math.max(nitrogenB[c]!, heliumB[c]!) - surfaceBar),
  );
}

/**
 * The no-stop time of every sample without a ceiling, by the general function; as `nitrogenNoStops` otherwise. At one
 * depth it is searched for once, as far ahead as the leg's last sample needs, and then counted down.
 */
export function mixedGasNoStops(
  timeline: Timeline,
  gf: number,
  ceilingM: Float64Array,
  into: { readonly noStopMin: Float64Array; readonly noStopLeader: Uint8Array },
): void {
  const { timeS } = timeline;
  const { noStopMin, noStopLeader } = into;
  const load = { ...timeline, at: 0 };
  for (const { first, end, steady } of legSamples(timeline)) {
    let found: NoStop | undefined;
    let foundAtS = 0;
    for (let i = first; i < end; i += 1) {
      if (ceilingM[i]! > 0) continue;
      const breathed = breathedAt(timeline, gasAt(timeline, i), timeline.ambientBar[i]!);
      if (!found || !steady) {
        const aheadMin = steady ? (timeS[end - 1]! - timeS[i]!) / 60 : 0;
        load.at = i * COMPARTMENTS;
        found = noStop(load, breathed, gf, SEARCHED_MIN + aheadMin);
        foundAtS = timeS[i]!;
      }
      const minutes = Math.max(0, found.minutes - (timeS[i]! - foundAtS) / 60);
      const solvedFor =
        found.leader > 0 && breathed.heliumBar === 0 && timeline.heliumBar[i * COMPARTMENTS + found.leader - 1] === 0;
      const told = minutes <= SEARCHED_MIN || solvedFor;
      noStopMin[i] = told ? minutes : Infinity;
      noStopLeader[i] = told ? found.leader : 0;
    }
  }
}
