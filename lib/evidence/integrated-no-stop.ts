import { sampleAt } from '../dive/timeline';
import { AIR, type Gas } from '../physics/gas';
import { compared, type Check } from './check';
import type { Engine } from './engine';
import { PUBLISHED_ROWS, SOLVED, STEP_SHARE, SURFACE_BAR, type Solve, type Stretch } from './numerical-solution';
import { seaLevelDive, stepsThrough } from './sea-level-dive';

const TRIMIX: Gas = { o2: 0.18, he: 0.45 };
const CASES: readonly { readonly gas: Gas; readonly depthM: number; readonly gf: number; readonly title: string }[] = [
  { gas: AIR, depthM: 18, gf: 1, title: '18 m on air, limits 100/100' },
  { gas: AIR, depthM: 30, gf: 0.85, title: '30 m on air, limits 85/85' },
  { gas: AIR, depthM: 40, gf: 0.85, title: '40 m on air, limits 85/85' },
  { gas: TRIMIX, depthM: 60, gf: 0.85, title: '60 m on trimix 18/45, limits 85/85' },
];
const DESCENT_M_PER_MIN = 20;

/**
 * Stays as long as the engine's no-stop time says, with tensions from the numerical solution, and looks how far the
 * compartment nearest its published limit at the surface is past it: not at all, and not short of it.
 */
export function integratedNoStopChecks(engine: Engine, solve: Solve, group: string): Check[] {
  return CASES.map(({ gas, depthM, gf, title }) => {
    const downMin = depthM / DESCENT_M_PER_MIN;
    const steps = stepsThrough([
      { toM: depthM, durationS: downMin * 60 },
      { toM: depthM, durationS: 60 },
    ]);
    const dive = seaLevelDive(gas, steps, { low: gf, high: gf });
    const timeline = engine.computeTimeline(dive, 10);
    const minutes = engine.figuresOf(timeline, dive.settings).noStopMin[sampleAt(timeline, downMin * 60)]!;
    // Without a time to stay there is nothing to integrate, and no figure to hold against the limit.
    const stays = minutes > 0 && Number.isFinite(minutes);
    const stretches: Stretch[] = [
      { minutes: downMin, fromM: 0, toM: depthM, gas },
      { minutes, fromM: depthM, toM: depthM, gas },
    ];
    const overBar = (stays ? PUBLISHED_ROWS : []).map(({ nitrogen, helium }, row) => {
      const nitrogenBar = solve(row, 'nitrogen', stretches, STEP_SHARE);
      const heliumBar = gas.he > 0 ? solve(row, 'helium', stretches, STEP_SHARE) : 0;
      const inertBar = nitrogenBar + heliumBar;
      const a = (nitrogen.aC * nitrogenBar + helium.a * heliumBar) / inertBar;
      const b = (nitrogen.b * nitrogenBar + helium.b * heliumBar) / inertBar;
      return inertBar - (SURFACE_BAR + gf * (a + SURFACE_BAR / b - SURFACE_BAR));
    });
    return compared({
      ...SOLVED,
      id: `${group}-no-stop-${depthM}`,
      group,
      title: `When the no-stop time ends, one compartment has just reached its limit: ${title}`,
      published: 0,
      ours: stays ? Math.max(...overBar) : Number.NaN,
      note: `The engine’s no-stop time on arrival is ${minutes.toFixed(2)} min; the tensions after it are the library’s.`,
    });
  });
}
