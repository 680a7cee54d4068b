import { plannedAt } from '../ascent/plan/ascent-start';
import { figuresOf } from '../ascent/figures';
import type { AscentPart } from '../ascent/plan/schedule';
import type { Dive, Settings, Step } from '../dive/dive';
import { legDurationS } from '../dive/script/leg-rate';
import { stepLines } from '../dive/script/plain-script';
import { computeTimeline, type Timeline } from '../dive/timeline';
import { METRES_PER_FOOT } from '../quantity/length';
import { tidy } from '../quantity/number';
import type { UnitSystem } from '../quantity/unit-system';
import { cleanSteps } from './clean-steps';
import { cutRun, runEndS, stepsAsSteered, type SteerRun } from './run';

/** Depths of a run are kept in multiples of this, m: a tenth of a metre, or a foot. */
export const KEPT_EVERY_M: Readonly<Record<UnitSystem, number>> = { metric: 0.1, imperial: METRES_PER_FOOT };

/** How far steps may be from what was steered, m, from the fewest steps to the most: the first that keep the figures are taken. */
const WITHIN_M = [0.3, 0.15, 0.05, 0];

/** Figures are the same when the ceiling never differs by more than this, m, and the stops owed at the end are the same. */
const CEILING_WITHIN_M = 0.1;

/** A run in the steps it is kept as, and how far they are from what was steered. */
export interface KeptRun {
  readonly steps: readonly Step[];
  /** The way up that the model plans where the run ends under water; else none. */
  readonly wayUp: readonly Step[];
  readonly deepestM: number;
  /** How long the run took, s. */
  readonly runS: number;
  /** The most that a depth, and that the ceiling, differs at any second, m. */
  readonly depthOffM: number;
  readonly ceilingOffM: number;
}

/** A run as the steps it is kept as: as few as keep its depths and the model's figures. Undefined where nobody dived. */
export function keptRun(settings: Settings, whole: SteerRun, system: UnitSystem): KeptRun | undefined {
  const run = underWater(whole);
  if (!run) return undefined;
  const everyM = KEPT_EVERY_M[system];
  const truth = seen(settings, stepsAsSteered(run));
  let kept: KeptRun | undefined;
  for (const withinM of WITHIN_M) {
    const steps = cleanSteps(run, withinM, everyM);
    const now = seen(settings, steps);
    kept = {
      steps,
      wayUp: wayUpFrom(now),
      deepestM: Math.max(...now.timeline.legs.map(({ toM }) => toM)),
      runS: runEndS(run),
      depthOffM: mostApart(now.timeline.depthM, truth.timeline.depthM),
      ceilingOffM: mostApart(now.figures.ceilingM, truth.figures.ceilingM),
    };
    if (kept.ceilingOffM <= CEILING_WITHIN_M && stopsAtEnd(now) === stopsAtEnd(truth)) break;
  }
  return kept;
}

/** The run in whole seconds, from leaving the surface to the last time under water or the arrival from there; undefined where nobody dived. */
function underWater(whole: SteerRun): SteerRun | undefined {
  const { timesS, depthsM } = cutRun(whole, runEndS(whole));
  const first = depthsM.findIndex((depthM) => depthM > 0) - 1;
  if (first < 0) return undefined;
  const last = Math.min(depthsM.findLastIndex((depthM) => depthM > 0) + 1, depthsM.length - 1);
  const startS = timesS[first]!;
  return {
    timesS: timesS.slice(first, last + 1).map((timeS) => timeS - startS),
    depthsM: depthsM.slice(first, last + 1),
  };
}

function seen(settings: Settings, steps: readonly Step[]) {
  const timeline = computeTimeline({ settings, steps: [...steps], lines: [] }, 1);
  return { timeline, figures: figuresOf(timeline, settings) };
}
type Seen = ReturnType<typeof seen>;

const lastOf = (timeline: Timeline) => timeline.length - 1;

function stopsAtEnd({ timeline, figures }: Seen): string {
  const { stops } = plannedAt(timeline, figures, lastOf(timeline));
  return stops.map(({ depthM, minutes }) => `${minutes} min at ${depthM} m`).join(', ');
}

function mostApart(some: Float64Array, others: Float64Array): number {
  return some.reduce((most, value, i) => Math.max(most, Math.abs(value - others[i]!)), 0);
}

/** The ascent planned from the end of what was seen, as steps. */
function wayUpFrom({ timeline, figures }: Seen): Step[] {
  const depthM = timeline.depthM[lastOf(timeline)]!;
  if (depthM === 0) return [];
  const { parts, timeToSurfaceMin } = plannedAt(timeline, figures, lastOf(timeline));
  // A plan without end is no way up; the plain one shows what comes of it.
  if (!Number.isFinite(timeToSurfaceMin))
    return [{ kind: 'ascend', toM: 0, durationS: legDurationS(depthM, 0, figures.limits.plan.ascentMMin) }];
  let gas: AscentPart['gas'] | undefined = timeline.gases[timeline.legs.at(-1)!.gas];
  return parts
    .filter(({ minutes }) => minutes > 0)
    .flatMap((part): Step[] => {
      const switched: Step[] = part.gas === gas ? [] : [{ kind: 'switch', gas: part.gas }];
      gas = part.gas;
      return [...switched, stepOf(part)];
    });
}

function stepOf({ fromM, toM, minutes }: AscentPart): Step {
  if (fromM === toM) return { kind: 'stay', durationS: Math.round(minutes * 60) };
  const durationS = legDurationS(fromM, toM, tidy(Math.abs(fromM - toM) / minutes));
  return { kind: toM > fromM ? 'descend' : 'ascend', toM, durationS };
}

/** What a run is called until it is given a name. */
export function nameOfRun(
  { deepestM, runS }: Pick<KeptRun, 'deepestM' | 'runS'>,
  say: (depthM: number) => string,
): string {
  return `Steered to ${say(deepestM)}, ${Math.max(1, Math.round(runS / 60))} min`;
}

/**
 * A kept run as a script with a name of its own, under the settings of the dive it was steered in place of; remarks on
 * that dive are left behind with it.
 */
export function scriptOfRun(dive: Dive, kept: KeptRun, name: string, system: UnitSystem): string {
  const settings = dive.lines.filter(({ stands }) => stands.as === 'setting').map(({ text }) => text);
  const steps = stepLines([...kept.steps, ...kept.wayUp], system);
  const run = steps.slice(0, kept.steps.length);
  const wayUp = steps.slice(kept.steps.length);
  const added = wayUp.length > 0 ? ['# the way up was added: the run ended under water', ...wayUp] : [];
  return [`# ${oneLine(name)}`, ...settings, '', '# steered by hand', ...run, ...added, ''].join('\n');
}

function oneLine(name: string): string {
  return name.replace(/[\s#]+/g, ' ').trim();
}
