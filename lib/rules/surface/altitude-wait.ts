import { printAltitude } from '../../quantity/altitude';
import { printPressure } from '../../quantity/pressure';
import type { UnitSystem } from '../../quantity/unit-system';
import { atmosphereBar } from '../../physics/atmosphere';
import { limitBar, mixedCoefficient } from '../../tissue/limit';
import type { Timeline } from '../../dive/timeline';
import { GUIDELINE_FROM_M, GUIDELINE_TO_M, type Guideline } from './flying-guideline';
import { sayWait } from '../say';
import { heliumAfter, longestWait, nitrogenAfter, restingAt, type Resting, type Wait } from './surface-interval';

/** Altitudes are told to the metre. */
const SAME_ALTITUDE_M = 1;

/** The model's own answer: when the tissues tolerate the pressure up there, and what decides it. */
interface ModelWait {
  readonly minutes: number;
  /** The compartment (1–16) that needs longest; 0 where all are ready. */
  readonly leader: number;
  /** What it holds now and what it may hold up there, bar. */
  readonly tensionBar: number;
  readonly limitBar: number;
}

export interface AltitudeWait {
  readonly altitudeM: number;
  readonly ambientBar: number;
  readonly highGradientFactor: number;
  readonly model: ModelWait;
  /** Null where no dive is remembered, or the altitude is not one the guideline speaks of. */
  readonly guideline: Guideline | null;
  /** From now on, h: the longer of the two. */
  readonly hoursLeft: number;
  readonly longer: 'model' | 'guideline';
}

/**
 * How long from a sample at the surface until one may go to an altitude, by the model and by the published guideline,
 * whichever is longer.
 * @param gf the high gradient factor, 0–1
 * @param sinceSurfacedS how long ago the last dive ended
 */
export function altitudeWait(
  timeline: Timeline,
  gf: number,
  sample: number,
  altitudeM: number,
  guideline: Guideline | null,
  sinceSurfacedS: number,
): AltitudeWait {
  const ambientBar = atmosphereBar(altitudeM);
  const compartments = restingAt(timeline, sample);
  const wait = altitudeWaitOf(timeline, gf, compartments, ambientBar);
  const leading = compartments[wait.leader - 1];
  const applies = guideline !== null && altitudeM >= GUIDELINE_FROM_M - SAME_ALTITUDE_M;
  const guidelineLeftH = applies ? Math.max(0, guideline.hours - sinceSurfacedS / 3600) : 0;
  const modelH = wait.minutes / 60;
  return {
    altitudeM,
    ambientBar,
    highGradientFactor: gf,
    model: {
      ...wait,
      tensionBar: leading ? inertAfter(leading, 0) : 0,
      limitBar: leading ? limitAfter(timeline, leading, wait.minutes, gf, ambientBar) : 0,
    },
    guideline: applies ? guideline : null,
    hoursLeft: Math.max(modelH, guidelineLeftH),
    longer: applies && guidelineLeftH >= modelH ? 'guideline' : 'model',
  };
}

/** The longest of some compartments' waits until each tolerates an ambient pressure, bar. */
export function altitudeWaitOf(
  timeline: Timeline,
  gf: number,
  compartments: readonly Resting[],
  ambientBar: number,
): Wait {
  return longestWait(
    compartments,
    (resting, minutes) => inertAfter(resting, minutes) <= limitAfter(timeline, resting, minutes, gf, ambientBar),
  );
}

function inertAfter(resting: Resting, minutes: number): number {
  return nitrogenAfter(resting, minutes) + heliumAfter(resting, minutes);
}

/**
 * What a compartment may hold at an ambient pressure, bar, under a gradient factor, after minutes at the surface on air:
 * the model's limit with its coefficients mixed by what is left of each gas.
 */
export function limitAfter(
  timeline: Timeline,
  resting: Resting,
  minutes: number,
  gf: number,
  ambientBar: number,
): number {
  const { nitrogenA, nitrogenB, heliumA, heliumB } = timeline.compartments;
  const c = resting.compartment - 1;
  // Long after a dive nothing but what was settled is left; Infinity stands for then.
  const at = Number.isFinite(minutes) ? minutes : 1e9;
  const nitrogen = nitrogenAfter(resting, at);
  const helium = heliumAfter(resting, at);
  const a = mixedCoefficient(nitrogen, helium, nitrogenA[c]!, heliumA[c]!);
  const b = mixedCoefficient(nitrogen, helium, nitrogenB[c]!, heliumB[c]!);
  return limitBar(a, b, gf, ambientBar);
}

/** The wait explained, a sentence each: the model's part, the guideline's, and which is longer. */
export function explainAltitudeWait(wait: AltitudeWait, system: UnitSystem): string[] {
  const there = `${printAltitude(wait.altitudeM, system)}, where the pressure is ${printPressure(wait.ambientBar, system)}`;
  const { model, guideline } = wait;
  const said =
    model.leader === 0
      ? [`The model: every compartment tolerates ${there}, already now.`]
      : [
          `The model: compartment ${model.leader} holds ${printPressure(model.tensionBar, system)} of inert gas and may hold ${printPressure(model.limitBar, system)} at ${there}.`,
          Number.isFinite(model.minutes)
            ? `Breathing air here it gets there in ${sayWait(model.minutes / 60)}.`
            : 'Breathing air here it never gets there: someone who lives here could not go straight up to it either.',
        ];
  if (guideline) {
    said.push(`The guideline: after ${guideline.after}, wait ${guideline.hours} h from surfacing.`);
    if (guideline.standIn) said.push(guideline.standIn);
    if (wait.altitudeM > GUIDELINE_TO_M + SAME_ALTITUDE_M)
      said.push(
        `It is about cabins up to ${printAltitude(GUIDELINE_TO_M, system)}; this is higher, so it may be too short.`,
      );
  } else if (wait.altitudeM < GUIDELINE_FROM_M - SAME_ALTITUDE_M) {
    said.push(
      `The guideline speaks of ${printAltitude(GUIDELINE_FROM_M, system)} and more; below that there is only the model.`,
    );
  }
  said.push(
    wait.hoursLeft <= 0
      ? 'Neither asks for any more waiting. No wait is a guarantee.'
      : `The longer of the two is the ${wait.longer}’s: ${sayWait(wait.hoursLeft)} from now. No wait is a guarantee.`,
  );
  return said;
}
