import { NO_STOP_CAP_MIN } from '../ascent/no-stop-cap';
import type { GradientFactors } from '../dive/dive';
import { SET_RIGHT } from '../dive/edit/set-right';
import { samplingOf, INTERVAL_EVERY_S } from '../dive/sampling';
import { sampleAt } from '../dive/timeline';
import { roundedTo } from '../quantity/rounding';
import { DEFAULT_RULES, type RuleSettings } from '../rules/all';
import { alarmBit } from '../rules/alarms';
import { RATE_PRESETS } from '../rules/settings/rate-limits';
import { isWithin } from '../rules/safety-stop';
import type { SafetyStopState } from '../rules/safety-stop-state';
import { shownAt, type Shown } from '../rules/unit/shown';
import { watchDive, type Watch } from '../rules/watch';
import type { BenchSettings, BenchUnit } from './bench-settings';
import { chamberDive, gaugeBar, unitDepthM } from './chamber-dive';
import type { ChamberRun, Checkpoint } from './chamber-run';

/** From the least to the most a unit may show, over the limits in use. */
export interface Band {
  readonly from: number;
  readonly to: number;
}

/** What a correct unit shows at a checkpoint. Null is what such a unit does not show there, or is not asked about. */
export interface Expected {
  readonly checkpoint: Checkpoint;
  /** On the clock of the run, s. */
  readonly timeS: number;
  readonly gaugeM: number;
  readonly gaugeBar: number;
  /** In metres of the water the unit is set to. */
  readonly depthM: number;
  /** Whole minutes; Infinity for more than a unit shows. Null where even the loosest limits have a ceiling. */
  readonly noStopMin: Band | null;
  /** The first stop asked for, m; 0 where the loosest limits ask for none. Null where none of them do. */
  readonly stopM: Band | null;
  readonly ceilingM: Band | null;
  /** Whether the rate alarm comes while the pressure falls to this checkpoint; null where it does not fall. */
  readonly rateAlarm: boolean | null;
  /** In the band of the safety stop: how it stands. */
  readonly safetyStop: SafetyStopState | null;
  readonly noFlyH: Band | null;
}

/** What a correct unit shows at every checkpoint of a run. */
export function expectedOf(
  run: ChamberRun,
  settings: BenchSettings,
  unit: BenchUnit,
  tookS: readonly (number | undefined)[] = [],
): Expected[] {
  const dive = chamberDive(run, settings, tookS);
  const { everyS, intervalEveryS } = samplingOf(dive, INTERVAL_EVERY_S);
  const rules = {
    ...DEFAULT_RULES,
    rateWatch: { ...DEFAULT_RULES.rateWatch, limit: RATE_PRESETS[settings.rateLimit].limit },
  };
  const watchUnder = (gradientFactors: GradientFactors) =>
    watchDive(
      dive,
      {
        ...SET_RIGHT,
        name: 'Unit',
        mode: unit.mode,
        water: unit.water,
        gradientFactors,
        ...(unit.gas && { gas: unit.gas }),
      },
      rules,
      everyS,
      { intervalEveryS },
    );
  const strict = watchUnder(settings.strictest);
  const loose = watchUnder(settings.loosest);
  const { legs } = strict.timeline;
  return run.checkpoints.map((checkpoint) => {
    const { startS, endS } = legs[checkpoint.leg]!;
    const sample = sampleAt(strict.timeline, endS);
    const common = {
      checkpoint,
      timeS: endS,
      gaugeM: checkpoint.gaugeM,
      gaugeBar: gaugeBar(settings, checkpoint.gaugeM),
      depthM: unitDepthM(settings, unit, checkpoint.gaugeM),
    };
    return {
      ...common,
      ...figures(shownAt(strict, sample), shownAt(loose, sample), rules),
      rateAlarm: rateAlarmIn(strict, checkpoint, startS, endS),
    };
  });
}

function figures(
  strict: Shown,
  loose: Shown,
  rules: RuleSettings,
): Omit<Expected, 'checkpoint' | 'timeS' | 'gaugeM' | 'gaugeBar' | 'depthM' | 'rateAlarm'> {
  const { bandFromM, bandToM } = rules.safetyStop;
  const inBand = strict.safetyStop !== null && isWithin(strict.depthM, bandFromM, bandToM);
  return {
    noStopMin:
      strict.mode === 'dive' && loose.ceilingM === null
        ? {
            from: roundedTo(minutes(strict), 0, 'down'),
            to: minutes(loose) > NO_STOP_CAP_MIN ? Infinity : roundedTo(minutes(loose), 0, 'down'),
          }
        : null,
    stopM: strict.requiredStop ? band(loose.requiredStop?.depthM ?? 0, strict.requiredStop.depthM) : null,
    ceilingM: strict.ceilingM === null ? null : band(loose.ceilingM ?? 0, strict.ceilingM),
    safetyStop: inBand ? strict.safetyStop!.state : null,
    noFlyH: strict.noFlyH === null || loose.noFlyH === null ? null : band(loose.noFlyH, strict.noFlyH),
  };
}

function minutes({ noStopMin, noStopOverCap }: Shown): number {
  return noStopOverCap ? Infinity : (noStopMin ?? 0);
}

function band(one: number, other: number): Band {
  return { from: Math.min(one, other), to: Math.max(one, other) };
}

function rateAlarmIn(
  { setup, timeline, tracks }: Watch,
  { moving, way }: Checkpoint,
  startS: number,
  endS: number,
): boolean | null {
  if (!moving || way === 'down' || setup.mode === 'gauge') return null;
  const bit = alarmBit('slow-down');
  for (let i = sampleAt(timeline, startS) + 1; i < timeline.length && timeline.timeS[i]! <= endS; i += 1) {
    if ((tracks.alarms[i]! & bit) !== 0) return true;
  }
  return false;
}
