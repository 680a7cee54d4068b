import { ascentStartAt } from '../ascent/plan/ascent-start';
import { figuresOf } from '../ascent/figures';
import { ascentPlanner, type Schedule } from '../ascent/plan/schedule';
import { startsAfter } from '../ascent/plan/start-after';
import type { Dive } from '../dive/dive';
import { ascentPlanOf } from './ascent-plan';
import { breathingRatesOf, stressFactorOf } from './consumption';
import { gasNeeds, partNeeds, type GasNeed, type PartNeed } from './gas-need';

/** Minutes two divers are given at the deepest point to find each other and share. Common practice, no source. */
const USUAL_SHARING_MIN = 1;

export interface ReserveOptions {
  /** Minutes at the deepest point before the ascent begins. */
  readonly sharingMin?: number;
  /** How many breathe from these cylinders. */
  readonly divers?: number;
  /** Instead of the dive's own. */
  readonly stressFactor?: number;
  /** Which dive of the day, from 0; the last unless told. */
  readonly diveNumber?: number;
}

/** The gas it takes to bring two divers up from the worst moment. */
export interface Reserve {
  readonly depthM: number;
  readonly sharingMin: number;
  readonly divers: number;
  readonly stressFactor: number;
  /** The ascent from the end of the sharing, with the stops the model asks for. */
  readonly schedule: Schedule;
  readonly parts: readonly PartNeed[];
  readonly needs: readonly GasNeed[];
}

/**
 * What has to be left when the ascent begins, at the last moment at the deepest point: the sharing time there, then the
 * model's ascent with its stops and gas switches, for all divers together, each breathing faster by the stress factor.
 * Both are taken to breathe every gas from these cylinders. The model doesn't know whether two frightened divers can keep
 * its stops. The litres are Infinity where the ascent would never end.
 */
export function reserveFor(dive: Dive, options: ReserveOptions = {}): Reserve {
  const { settings } = dive;
  const { sharingMin = USUAL_SHARING_MIN, divers = 2, stressFactor = stressFactorOf(settings) } = options;
  const { timeline, depthM, gas } = ascentPlanOf(dive, options.diveNumber);
  const leaving = ascentStartAt(timeline, figuresOf(timeline, settings), timeline.length - 1);
  const schedule = ascentPlanner(
    settings,
    timeline,
  )(startsAfter(timeline, settings.gradientFactors)(leaving, sharingMin));
  const rates = breathingRatesOf(settings);
  const times = divers * stressFactor;
  const sharing = partNeeds(
    [{ fromM: depthM, toM: depthM, minutes: sharingMin, gas }],
    { ...rates, stops: rates.bottom },
    timeline,
    times,
  );
  const ascent = partNeeds(schedule.parts, rates, timeline, times);
  const endless = { ...sharing[0]!, litres: Infinity };
  const parts = [...sharing, ...(Number.isFinite(schedule.timeToSurfaceMin) ? ascent : [...ascent, endless])];
  return {
    depthM,
    sharingMin,
    divers,
    stressFactor,
    schedule,
    parts,
    needs: gasNeeds(parts, settings.supply?.cylinders ?? [], timeline),
  };
}
