import { legsOf } from '../dive/legs';
import { sampleAt } from '../dive/timeline';
import type { Dive, GradientFactors } from '../dive/dive';
import { AIR, type Gas } from '../physics/gas';
import { compared, type Check } from './check';
import type { Engine } from './engine';
import { integratedNoStopChecks } from './integrated-no-stop';
import { numericalSolution, PUBLISHED_ROWS, SOLVED, STEP_SHARE, type Solve, type Stretch } from './numerical-solution';
import { seaLevelDive, stepsThrough } from './sea-level-dive';

const group = 'integration';
const CONVERGENCE_BAR = 1e-10;
const COMPARTMENTS_SHOWN = ['1b', '5', '9', '16'] as const;
const TRIMIX: Gas = { o2: 0.18, he: 0.45 };
const NITROX_50: Gas = { o2: 0.5, he: 0 };
/** The limits do not bear on tensions. */
const ANY_LIMITS: GradientFactors = { low: 1, high: 1 };

const AIR_DIVE = seaLevelDive(
  AIR,
  stepsThrough([
    { toM: 40, durationS: 120 },
    { toM: 40, durationS: 1080 },
  ]),
  ANY_LIMITS,
);
const MIXED_DIVE = seaLevelDive(
  TRIMIX,
  [
    ...stepsThrough([
      { toM: 60, durationS: 180 },
      { toM: 60, durationS: 900 },
      { toM: 21, durationS: 260 },
    ]),
    { kind: 'switch', gas: NITROX_50 },
    { kind: 'stay', durationS: 300 },
    { kind: 'ascend', toM: 6, durationS: 100 },
    { kind: 'stay', durationS: 600 },
  ],
  ANY_LIMITS,
);

/** At which ends of legs tensions are compared, and what the leg is called. */
const COMPARED_LEGS = [
  { dive: AIR_DIVE, leg: 0, gases: ['nitrogen'], title: 'down to 40 m on air in 2 min' },
  { dive: AIR_DIVE, leg: 1, gases: ['nitrogen'], title: '18 min at 40 m on air' },
  { dive: MIXED_DIVE, leg: 2, gases: ['nitrogen', 'helium'], title: 'up to 21 m after 15 min at 60 m on trimix 18/45' },
  { dive: MIXED_DIVE, leg: 5, gases: ['nitrogen', 'helium'], title: 'stops on 50% nitrox after trimix 18/45' },
] as const;

/**
 * The engine's closed forms, as a dive uses them, against a numerical solution of the same equation whose steps are at
 * most `stepShare` half-times long; and whether halving those steps moves anything.
 */
export async function integrationChecks(engine: Engine, stepShare = STEP_SHARE): Promise<Check[]> {
  const solve = await numericalSolution();
  const { checks, movedBar } = tensionChecks(engine, solve, stepShare);
  const converged = compared({
    ...SOLVED,
    id: `${group}-convergence`,
    group,
    title: 'Halving the steps of the integration moves no tension',
    published: 0,
    ours: movedBar,
    tolerance: CONVERGENCE_BAR,
    reason: 'a tenth of what the comparisons allow, so that the integration is no part of their differences',
  });
  return [...checks, converged, ...integratedNoStopChecks(engine, solve, group)];
}

function tensionChecks(engine: Engine, solve: Solve, stepShare: number) {
  let movedBar = 0;
  const checks = COMPARED_LEGS.flatMap(({ dive, leg, gases, title }, number) => {
    const timeline = engine.computeTimeline(dive, 10);
    const sample = sampleAt(timeline, legsOf(dive).legs[leg]!.endS);
    const stretches = stretchesUpTo(dive, leg);
    return gases.flatMap((gas) =>
      COMPARTMENTS_SHOWN.map((compartment) => {
        const row = PUBLISHED_ROWS.findIndex((one) => one.compartment === compartment);
        const published = solve(row, gas, stretches, stepShare);
        movedBar = Math.max(movedBar, Math.abs(published - solve(row, gas, stretches, stepShare / 2)));
        const tensions = gas === 'nitrogen' ? timeline.nitrogenBar : timeline.heliumBar;
        return compared({
          ...SOLVED,
          id: `${group}-${number}-${gas}-${compartment}`,
          group,
          title: `Tension of ${gas} in compartment ${compartment}: ${title}`,
          published,
          ours: tensions[sample * PUBLISHED_ROWS.length + row]!,
        });
      }),
    );
  });
  return { checks, movedBar };
}

function stretchesUpTo(dive: Dive, lastLeg: number): Stretch[] {
  const { legs, gases } = legsOf(dive);
  return legs.slice(0, lastLeg + 1).map(({ startS, endS, fromM, toM, gas }) => ({
    minutes: (endS - startS) / 60,
    fromM,
    toM,
    gas: gases[gas]!,
  }));
}
