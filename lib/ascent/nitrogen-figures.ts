import type { Timeline } from '../dive/timeline';
import { nitrogenFraction } from '../physics/gas';
import { COMPARTMENTS, type Compartments } from '../tissue/coefficients';
import type { GradientFactors } from '../dive/dive';
import { lineDepthBar } from './ceiling';
import { legSamples, type LegSamples } from './leg-samples';

/*
 * Ceilings and no-stop times of a whole timeline without helium. There a and b stand still, and while the depth does
 * too, every tension moves one way only, so most samples need no more than a comparison. The general functions, which
 * look at one instant, say the same; the tests hold the two together.
 */

/** A tension closer to its limit than this share of it is looked at exactly. */
const CLOSE = 1e-12;

/** Tolerated tensions at the surface under a gradient factor, bar. */
function surfaceLimits({ nitrogenA, nitrogenB }: Compartments, gf: number, surfaceBar: number): Float64Array {
  return nitrogenA.map((a, c) => surfaceBar + gf * (a + surfaceBar / nitrogenB[c]! - surfaceBar));
}

/**
 * The ceiling of every sample under one gradient factor, m, into `ceilingM`; with `leaders`, also the compartment (1–16)
 * that sets it. Without a ceiling both are 0.
 */
export function nitrogenCeilings(timeline: Timeline, gf: number, ceilingM: Float64Array, leaders?: Uint8Array): void {
  const { nitrogenBar, surfaceBar, barPerMetre, compartments } = timeline;
  const stride = COMPARTMENTS;
  ceilingM.fill(0);
  leaders?.fill(0);
  for (const { first, end, compartment } of spansOver(timeline, gf)) {
    const offsetBar = compartments.nitrogenA[compartment]! * gf;
    const scale = 1 / (gf / compartments.nitrogenB[compartment]! - gf + 1);
    for (let i = first; i < end; i += 1) {
      const own = ((nitrogenBar[i * stride + compartment]! - offsetBar) * scale - surfaceBar) / barPerMetre;
      if (own > ceilingM[i]!) {
        ceilingM[i] = own;
        if (leaders) leaders[i] = compartment + 1;
      }
    }
  }
}

/** The ceiling of every sample on the line from low to high, which begins at its own anchor, and what sets it. */
export function nitrogenCeilingsOnLine(
  timeline: Timeline,
  gf: GradientFactors,
  anchorM: Float64Array,
  ceilingM: Float64Array,
  leaders: Uint8Array,
): void {
  const { nitrogenBar, surfaceBar, barPerMetre, compartments } = timeline;
  const stride = COMPARTMENTS;
  ceilingM.fill(0);
  leaders.fill(0);
  for (const { first, end, compartment } of spansOver(timeline, gf.high)) {
    const a = compartments.nitrogenA[compartment]!;
    const b = compartments.nitrogenB[compartment]!;
    for (let i = first; i < end; i += 1) {
      if (anchorM[i] === 0) continue;
      const own =
        lineDepthBar(nitrogenBar[i * stride + compartment]!, a, b, gf, surfaceBar, anchorM[i]! * barPerMetre) /
        barPerMetre;
      if (own > ceilingM[i]!) {
        ceilingM[i] = own;
        leaders[i] = compartment + 1;
      }
    }
  }
  for (let i = 0; i < ceilingM.length; i += 1) if (ceilingM[i]! > anchorM[i]!) ceilingM[i] = anchorM[i]!;
}

interface Span {
  readonly first: number;
  readonly end: number;
  /** From 0. */
  readonly compartment: number;
}

/** Samples and compartments that may be over the limit at the surface: at one depth, those that are at either end of the leg. */
function spansOver(timeline: Timeline, gf: number): Span[] {
  const { nitrogenBar, compartments, surfaceBar } = timeline;
  const almostBar = surfaceLimits(compartments, gf, surfaceBar).map((limit) => limit * (1 - CLOSE));
  const spans: Span[] = [];
  for (const { first, end, steady } of legSamples(timeline)) {
    const last = end - 1;
    for (let compartment = 0; compartment < COMPARTMENTS; compartment += 1) {
      const almost = almostBar[compartment]!;
      if (
        steady &&
        nitrogenBar[first * COMPARTMENTS + compartment]! < almost &&
        nitrogenBar[last * COMPARTMENTS + compartment]! < almost
      )
        continue;
      spans.push({ first, end, compartment });
    }
  }
  return spans;
}

/**
 * The no-stop time of every sample that has no ceiling, min, and the compartment that ends it; Infinity and 0
 * where none will. Samples with a ceiling are left alone.
 *
 * At one depth all compartments' times run down together, so the time is worked out once and then counted down.
 */
export function nitrogenNoStops(
  timeline: Timeline,
  gf: number,
  ceilingM: Float64Array,
  into: { readonly noStopMin: Float64Array; readonly noStopLeader: Uint8Array },
): void {
  const limitBar = surfaceLimits(timeline.compartments, gf, timeline.surfaceBar);
  let likely = 0;
  for (const leg of legSamples(timeline)) likely = noStopsOfLeg(timeline, leg, limitBar, ceilingM, into, likely);
}

/** The no-stop times of one leg; returns the compartment that ended the last of them. */
function noStopsOfLeg(
  { nitrogenBar, ambientBar, timeS, lungOffsetBar, legs, gases, compartments }: Timeline,
  { legIndex, first, end, steady }: LegSamples,
  limitBar: Float64Array,
  ceilingM: Float64Array,
  { noStopMin, noStopLeader }: { readonly noStopMin: Float64Array; readonly noStopLeader: Uint8Array },
  likely: number,
): number {
  const k = compartments.nitrogenK;
  const fraction = nitrogenFraction(gases[legs[legIndex]!.gas]!);
  let leader = likely;
  let minutes = 0;
  let countedFromS = -1;
  for (let i = first; i < end; i += 1) {
    if (ceilingM[i]! > 0) continue;
    if (countedFromS < 0) {
      const breathedBar = (ambientBar[i]! - lungOffsetBar) * fraction;
      leader = noStopLeaderOf(nitrogenBar, i * COMPARTMENTS, k, limitBar, breathedBar, leader);
      minutes =
        leader === 0
          ? Infinity
          : minutesToLimit(
              nitrogenBar[i * COMPARTMENTS + leader - 1]!,
              breathedBar,
              limitBar[leader - 1]!,
              k[leader - 1]!,
            );
      if (steady) countedFromS = timeS[i]!;
      noStopMin[i] = Math.max(0, minutes);
    } else {
      noStopMin[i] = Math.max(0, minutes - (timeS[i]! - countedFromS) / 60);
    }
    noStopLeader[i] = leader;
  }
  return leader;
}

/**
 * The compartment (1–16) that ends the no-stop time while `breathedBar` of nitrogen is in the lungs, trying `likely`
 * first; 0 where none will. Asked only while every compartment is within its limit.
 */
function noStopLeaderOf(
  tensions: Float64Array,
  at: number,
  k: Float64Array,
  limitBar: Float64Array,
  breathedBar: number,
  likely: number,
): number {
  let best = Infinity;
  let leader = 0;
  if (likely > 0 && breathedBar > limitBar[likely - 1]!) {
    best = minutesToLimit(tensions[at + likely - 1]!, breathedBar, limitBar[likely - 1]!, k[likely - 1]!);
    leader = likely;
  }
  for (let c = 0; c < COMPARTMENTS; c += 1) {
    const limit = limitBar[c]!;
    if (breathedBar <= limit) continue;
    const tension = tensions[at + c]!;
    // ln x ≥ 1 − 1/x: a compartment that cannot be the first is passed over without its logarithm.
    if (limit - tension >= best * k[c]! * (breathedBar - tension)) continue;
    const minutes = minutesToLimit(tension, breathedBar, limit, k[c]!);
    if (minutes < best) {
      best = minutes;
      leader = c + 1;
    }
  }
  return leader;
}

/** Haldane's solution turned round: minutes until a tension reaches a limit below the breathed pressure. */
function minutesToLimit(tensionBar: number, breathedBar: number, limitBar: number, k: number): number {
  return Math.log((breathedBar - tensionBar) / (breathedBar - limitBar)) / k;
}
