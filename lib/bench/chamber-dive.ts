import { fastestWithin } from '../quantity/rate';
import type { Dive } from '../dive/dive';
import { altitudeOfAtmosphere } from '../physics/atmosphere';
import { barPerMetre, type Water } from '../physics/water';
import type { BenchSettings, BenchUnit } from './bench-settings';
import type { ChamberRun } from './chamber-run';

/** The water whose metres the reference gauge shows. */
export function gaugeWater({ gaugeScale, potWater }: Pick<BenchSettings, 'gaugeScale' | 'potWater'>): Water {
  return gaugeScale === 'pot' ? potWater : gaugeScale;
}

/** Pressure above the surface that the reference gauge shows at one of its depths, bar. */
export function gaugeBar(settings: BenchSettings, gaugeM: number): number {
  return gaugeM * barPerMetre(gaugeWater(settings));
}

/**
 * Pressure above the surface at the units, bar: the gauge's and that of the water standing over them, p = ρ·g·h. With no
 * pressure on the gauge the pot counts as open and the units as dry.
 */
function pressureAtUnitsBar(settings: BenchSettings, gaugeM: number): number {
  return gaugeM > 0 ? gaugeBar(settings, gaugeM) + settings.headM * barPerMetre(settings.potWater) : 0;
}

/** The depth a correct unit shows while the gauge shows another: both count metres, each of its own water. */
export function unitDepthM(settings: BenchSettings, unit: Pick<BenchUnit, 'water'>, gaugeM: number): number {
  return pressureAtUnitsBar(settings, gaugeM) / barPerMetre(unit.water);
}

/**
 * What the units go through, as a dive: in metres of the gauge's water, with the pot's standing water added, from the
 * surface pressure of the day (told as the altitude that has it).
 * @param tookS how long steps really took, s, by their index; as scripted where nothing is known
 */
export function chamberDive(
  run: ChamberRun,
  settings: BenchSettings,
  tookS: readonly (number | undefined)[] = [],
): Dive {
  const water = gaugeWater(settings);
  const atUnitsM = (gaugeM: number) => pressureAtUnitsBar(settings, gaugeM) / barPerMetre(water);
  const altitudeM = altitudeOfAtmosphere(settings.surfaceBar);
  const steps = run.dive.steps.map((step, index) => {
    if (step.kind === 'switch') return step;
    const timed = { ...step, durationS: tookS[index] ?? step.durationS };
    return 'toM' in timed ? { ...timed, toM: atUnitsM(timed.toM) } : timed;
  });
  return {
    settings: { ...run.dive.settings, water, altitudeM, start: { kind: 'adapted', altitudeM }, setups: [] },
    steps,
    lines: [],
  };
}

/** A change of pressure faster than the person running the chamber allows. */
export interface FastStep {
  readonly step: number;
  readonly fromM: number;
  readonly toM: number;
  readonly rateMMin: number;
}

/** The scripted changes of pressure that are faster than stated, in or out; none while no rate is stated. */
export function fasterThanStated(run: ChamberRun, { fastestMMin }: BenchSettings): FastStep[] {
  if (fastestMMin === null) return [];
  const fast: FastStep[] = [];
  let fromM = 0;
  run.dive.steps.forEach((step, index) => {
    if (step.kind === 'interval') fromM = 0;
    if (!('toM' in step)) return;
    const rateMMin = (Math.abs(step.toM - fromM) * 60) / step.durationS;
    if (rateMMin > fastestWithin(fastestMMin) * (1 + 1e-9)) fast.push({ step: index, fromM, toM: step.toM, rateMMin });
    fromM = step.toM;
  });
  return fast;
}
