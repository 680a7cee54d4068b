import type { Dive, Settings, Step } from '../../dive/dive';
import { legsOf } from '../../dive/legs';
import type { Setup } from '../../dive/setup';
import { sameGas } from '../../physics/gas';
import { barPerMetre } from '../../physics/water';

export interface BelievedDive {
  /** The dive as the unit takes it to be; the very same object where it is right about everything. */
  readonly dive: Dive;
  /** Legs at which it begins with fresh tissues. */
  readonly freshAtLegs: readonly number[];
  /** What a metre more of depth adds to the depth it shows. */
  readonly depthFactor: number;
}

/**
 * The dive as a unit with this setup believes it.
 *
 * Its sensor is zeroed at the surface and measures the pressure of the water above it, which it turns into metres of
 * the water it is set to; then come the sensor's own faults. So
 * shown depth = true depth · (true bar/m ÷ its bar/m) · scale + offset, and never less than 0.
 * At the surface it shows 0 even with an offset. The faults are applied to the ends of each change of depth, so the
 * offset fades in on the way down from the surface and out on the way up to it.
 *
 * A unit set to another gas than the dive begins with stays on it: it follows no switch and plans with no carried gas.
 * One set to another altitude takes its diver to be settled there, unless tensions from an earlier dive are carried
 * over: a unit that was on that dive keeps them.
 */
export function believedDive(dive: Dive, setup: Setup): BelievedDive {
  const { settings } = dive;
  const water = setup.water ?? settings.water;
  const depthFactor = (barPerMetre(settings.water) / barPerMetre(water)) * setup.depthScale;
  const shownM = (depthM: number) => (depthM > 0 ? Math.max(0, depthM * depthFactor + setup.depthOffsetM) : 0);
  const wrongGas = setup.gas !== undefined && !sameGas(setup.gas, settings.gas) ? setup.gas : undefined;
  const wrongAltitudeM =
    setup.altitudeM !== undefined && setup.altitudeM !== settings.altitudeM ? setup.altitudeM : undefined;
  const rightDepths = depthFactor === 1 && setup.depthOffsetM === 0;
  const gradientFactors = setup.gradientFactors ?? settings.gradientFactors;
  const sameFactors =
    gradientFactors.low === settings.gradientFactors.low && gradientFactors.high === settings.gradientFactors.high;
  const freshAtLegs = freshLegs(dive, setup);
  if (
    rightDepths &&
    sameFactors &&
    water === settings.water &&
    wrongGas === undefined &&
    wrongAltitudeM === undefined
  ) {
    return { dive, freshAtLegs, depthFactor };
  }
  const believed: Settings = {
    ...settings,
    water,
    gradientFactors,
    ...(wrongGas && { gas: wrongGas, carried: [] }),
    ...(wrongAltitudeM !== undefined && { altitudeM: wrongAltitudeM, start: startAt(settings, wrongAltitudeM) }),
  };
  const steps = dive.steps.map((step): Step => {
    if (step.kind === 'switch') return wrongGas ? { kind: 'switch', gas: wrongGas } : step;
    return 'toM' in step && !rightDepths ? { ...step, toM: shownM(step.toM) } : step;
  });
  return { dive: { settings: believed, steps, lines: [] }, freshAtLegs, depthFactor };
}

function startAt(settings: Settings, altitudeM: number): Settings['start'] {
  return settings.start.kind === 'tensions' ? settings.start : { kind: 'adapted', altitudeM };
}

/** The first leg of each dive before which the unit's memory was lost. */
function freshLegs(dive: Dive, setup: Setup): number[] {
  if (setup.freshBeforeDives.length === 0) return [];
  const { legs } = legsOf(dive);
  return setup.freshBeforeDives.flatMap((number) => {
    const first = legs.findIndex((leg) => leg.diveNumber === number && !leg.interval);
    return first > 0 ? [first] : [];
  });
}

/** Whether a unit takes the dive for what it is in everything it could be wrong about. */
export function isRight(dive: Dive, setup: Setup): boolean {
  const believed = believedDive(dive, setup);
  return setup.mode === 'dive' && believed.dive === dive && believed.freshAtLegs.length === 0;
}
