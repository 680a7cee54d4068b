import type { GradientFactors } from '../dive/dive';
import { gasAt, type Timeline } from '../dive/timeline';
import { nitrogenFraction } from '../physics/gas';
import { COMPARTMENTS } from '../tissue/coefficients';
import { toleratedAmbientBar } from '../tissue/limit';
import { FREE, lineAlong, type LineState } from './anchor';
import { GasPath, mostOf, type BreathedAlong } from './gas-path';

/** The ceilings under each gradient factor alone at every sample, m, with the compartment (1–16) that sets the one at high. */
interface Ceilings {
  readonly atLowM: Float64Array;
  readonly atHighM: Float64Array;
  readonly highLeader: Uint8Array;
}

/**
 * The anchor of the line from low to high at every sample, m, into `anchorM`; 0 while the dive is free, and where low and
 * high are one. Between samples nothing is missed: where a limit may be passed or a ceiling may peak there, the stretch
 * is followed exactly; elsewhere comparing its ends is enough.
 */
export function fillAnchors(timeline: Timeline, gf: GradientFactors, ceilings: Ceilings, anchorM: Float64Array): void {
  anchorM.fill(0);
  if (gf.low === gf.high) return;
  const { length, leg, barPerMetre, freshAtLegs } = timeline;
  const { atLowM, atHighM } = ceilings;
  const path = new GasPath(timeline.compartments, timeline.surfaceBar);
  const along: Writable<BreathedAlong> = {
    nitrogenStartBar: 0,
    nitrogenEndBar: 0,
    heliumStartBar: 0,
    heliumEndBar: 0,
  };
  let anchorBar = 0;
  for (let i = 0; i < length; i += 1) {
    const bound = atHighM[i]! > 0;
    const begins = i === 0 || (leg[i] !== leg[i - 1] && freshAtLegs.includes(leg[i]!));
    const held =
      !begins &&
      bound &&
      atHighM[i - 1]! > 0 &&
      staysBound(timeline, gf, i, ceilings.highLeader[i - 1]! - 1, anchorBar, along);
    if (begins) anchorBar = 0;
    else if (!bound && atHighM[i - 1] === 0 && staysFree(timeline, gf.high, i, along)) continue;
    else if (!held) {
      breathedBetween(timeline, i, along);
      path.begin(
        timeline.nitrogenBar,
        timeline.heliumBar,
        (i - 1) * COMPARTMENTS,
        1,
        along,
        (timeline.timeS[i]! - timeline.timeS[i - 1]!) / 60,
      );
      const before: LineState = atHighM[i - 1]! > 0 ? { bound: true, anchorBar } : FREE;
      anchorBar = lineAlong(path, gf, before)!.anchorBar;
    }
    anchorBar = bound ? Math.max(anchorBar, atLowM[i]! * barPerMetre) : 0;
    anchorM[i] = anchorBar / barPerMetre;
  }
}

type Writable<T> = { -readonly [Name in keyof T]: T[Name] };

/** What is breathed from the sample before to sample `i`, into `along`. */
function breathedBetween(timeline: Timeline, i: number, along: Writable<BreathedAlong>): void {
  const { ambientBar, lungOffsetBar } = timeline;
  const gas = gasAt(timeline, i - 1);
  const nitrogen = nitrogenFraction(gas);
  const startBar = ambientBar[i - 1]! - lungOffsetBar;
  const endBar = ambientBar[i]! - lungOffsetBar;
  along.nitrogenStartBar = startBar * nitrogen;
  along.nitrogenEndBar = endBar * nitrogen;
  along.heliumStartBar = startBar * gas.he;
  along.heliumEndBar = endBar * gas.he;
}

/** Whether no compartment can have been over its limit between two samples at which none was. */
function staysFree(timeline: Timeline, high: number, i: number, along: Writable<BreathedAlong>): boolean {
  const { ambientBar, hasHelium, surfaceBar } = timeline;
  // Nitrogen alone peaks between samples only while the pressure falls.
  if (!hasHelium && ambientBar[i]! >= ambientBar[i - 1]!) return true;
  breathedBetween(timeline, i, along);
  for (let c = 0; c < COMPARTMENTS; c += 1) {
    const { a, b } = strictest(timeline, c);
    if (mostHeldBar(timeline, i, c, along) > surfaceBar + high * (a + surfaceBar / b - surfaceBar)) return false;
  }
  return true;
}

/** Whether one compartment is over all the way between two samples, and none can have had its ceiling below the anchor in between. */
function staysBound(
  timeline: Timeline,
  { low, high }: GradientFactors,
  i: number,
  leader: number,
  anchorBar: number,
  along: Writable<BreathedAlong>,
): boolean {
  const { ambientBar, hasHelium, nitrogenBar, surfaceBar, compartments } = timeline;
  const rises = ambientBar[i]! < ambientBar[i - 1]!;
  const still = ambientBar[i] === ambientBar[i - 1];
  if (!hasHelium) {
    const limitBar =
      surfaceBar + high * (compartments.nitrogenA[leader]! + surfaceBar / compartments.nitrogenB[leader]! - surfaceBar);
    if (!(nitrogenBar[i * COMPARTMENTS + leader]! > limitBar)) return false;
    if (still) return true;
    // Going down, a compartment may dip and come back.
    if (!rises) {
      breathedBetween(timeline, i, along);
      return (
        nitrogenBar[(i - 1) * COMPARTMENTS + leader]! <= along.nitrogenStartBar || along.nitrogenStartBar > limitBar
      );
    }
  }
  breathedBetween(timeline, i, along);
  for (let c = 0; c < COMPARTMENTS; c += 1) {
    const { a, b } = strictest(timeline, c);
    if (toleratedAmbientBar(mostHeldBar(timeline, i, c, along), a, b, low) - surfaceBar > anchorBar) return false;
  }
  return !hasHelium || overAtBoth(timeline, high, i, leader);
}

/** Whether a compartment with both gases, however they mix, is over its limit at both ends. */
function overAtBoth(
  { nitrogenBar, heliumBar, compartments, surfaceBar }: Timeline,
  high: number,
  i: number,
  c: number,
) {
  const a = Math.max(compartments.nitrogenA[c]!, compartments.heliumA[c]!);
  const b = Math.min(compartments.nitrogenB[c]!, compartments.heliumB[c]!);
  const limitBar = surfaceBar + high * (a + surfaceBar / b - surfaceBar);
  const least = (of: Float64Array) => Math.min(of[i * COMPARTMENTS + c]!, of[(i - 1) * COMPARTMENTS + c]!);
  return least(nitrogenBar) + least(heliumBar) > limitBar;
}

/**
 * The most a compartment can have held between two samples, bar; 0 where it was not more than at one of them, which was
 * looked at: a tension that turns does so where it meets what is breathed.
 */
function mostHeldBar(
  { nitrogenBar, heliumBar, hasHelium }: Timeline,
  i: number,
  c: number,
  along: BreathedAlong,
): number {
  const before = (i - 1) * COMPARTMENTS + c;
  const now = i * COMPARTMENTS + c;
  const nitrogen = mostOf(nitrogenBar[before]!, nitrogenBar[now]!, along.nitrogenStartBar, along.nitrogenEndBar);
  if (!hasHelium) return nitrogen > Math.max(nitrogenBar[before]!, nitrogenBar[now]!) ? nitrogen : 0;
  return nitrogen + mostOf(heliumBar[before]!, heliumBar[now]!, along.heliumStartBar, along.heliumEndBar);
}

/** The coefficients under which a compartment tolerates least, whatever it holds. */
function strictest({ hasHelium, compartments }: Timeline, c: number): { readonly a: number; readonly b: number } {
  const { nitrogenA, nitrogenB, heliumA, heliumB } = compartments;
  if (!hasHelium) return { a: nitrogenA[c]!, b: nitrogenB[c]! };
  return { a: Math.min(nitrogenA[c]!, heliumA[c]!), b: Math.max(nitrogenB[c]!, heliumB[c]!) };
}
