import differences from '../../content/curves/no-stop-differences.json';
import type { Settings } from '../dive/dive';
import { defaultSettings } from '../dive/default-settings';
import { AIR } from '../physics/gas';
import { curveSite, rested } from './curve-site';
import { noStopCurve } from './no-stop-curve';
import type { PublishedRow, PublishedTable } from './published-no-stop';

/** One step of the way from the model's time to a table's. */
export interface DifferenceStep {
  readonly id: 'model' | 'descent' | 'whole-minutes' | 'remainder';
  /** The time as it stands after this step, min. */
  readonly minutes: number;
  /** How much this step changed it, min; 0 for the first. */
  readonly changeMin: number;
  readonly why: readonly string[];
}

/**
 * Why a table's row differs from the model's time, step by step: the model's own time on air at the row's depth and the
 * table's altitude, counted from arrival; the way down counted in; cut to whole minutes; and the rest, which is
 * another model. `gf` is the gradient factor at the surface.
 */
export function whyTheyDiffer(table: PublishedTable, row: PublishedRow, gf: number): DifferenceStep[] {
  const texts = differences.find(({ id }) => id === table.id)!;
  const settings: Settings = {
    ...defaultSettings(),
    altitudeM: table.altitudeM,
    start: { kind: 'adapted', altitudeM: table.altitudeM },
  };
  const conditions = { site: curveSite(settings), tissues: rested(settings), gas: AIR, gf };
  const own = noStopCurve(conditions, [row.depthM]).minutes[0]!;
  const fromSurface = noStopCurve({ ...conditions, descentMMin: table.descentMMin }, [row.depthM]).minutes[0]!;
  const whole = Math.floor(fromSurface);
  const steps = [
    { id: 'model' as const, minutes: own, why: ['The model’s own time, counted from arriving at depth.'] },
    { id: 'descent' as const, minutes: fromSurface, why: [texts.descent] },
    { id: 'whole-minutes' as const, minutes: whole, why: [texts.wholeMinutes] },
    { id: 'remainder' as const, minutes: row.minutes, why: texts.remainder },
  ];
  return steps.map((step, i) => ({
    ...step,
    changeMin: i === 0 || step.minutes === steps[i - 1]!.minutes ? 0 : step.minutes - steps[i - 1]!.minutes,
  }));
}
