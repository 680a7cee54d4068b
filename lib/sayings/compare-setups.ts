import { NO_STOP_CAP_MIN } from '../ascent/no-stop-cap';
import { stopChanges } from '../ascent/stop-changes';
import { atDayClock } from '../dive/day-clock';
import { sayDepth } from '../quantity/depth';
import type { UnitSystem } from '../quantity/unit-system';
import { wrongSettings } from '../rules/unit/wrong-settings';
import type { Watch } from '../rules/watch';
import { numberAs, printAs } from './measures';
import { capital } from '../quantity/capital';

/** One thing in which a unit shows other than is so. */
interface Difference {
  readonly kind: 'depth' | 'no-stop time' | 'ceiling' | 'stops' | 'lock' | 'nothing shown';
  /** When it shows best, s. */
  readonly timeS: number;
  /** What the unit shows against what is so; m or min. */
  readonly shown: number;
  readonly so: number;
  /** To follow the unit's name: "it shows 12 min more no-stop time at 30 m than is so". */
  readonly text: string;
}

export interface Comparison {
  /** In what it is set wrong, each to follow its name. */
  readonly wrong: readonly string[];
  readonly differences: readonly Difference[];
  /** The whole in sentences: what is wrong with the unit, and what comes of it. */
  readonly sentences: readonly string[];
}

/**
 * Holds a unit against one that is right about everything. Both have watched the same dive with the same samples;
 * throws RangeError if not.
 */
export function compareSetups(watch: Watch, right: Watch, system: UnitSystem = 'metric'): Comparison {
  if (watch.timeline.length !== right.timeline.length) throw new RangeError('the two watches were not sampled alike');
  const wrong = wrongSettings(right.dive, watch.setup, system);
  const differences =
    watch.setup.mode === 'gauge'
      ? nothingShown(right)
      : [
          ...depthDifference(watch, right, system),
          ...noStopDifferences(watch, right, system),
          ...ceilingDifference(watch, right, system),
          ...stopDifferences(watch, right),
          ...lockDifference(watch, right),
        ];
  const { name } = watch.setup;
  const cause = wrong.length > 0 ? `${name} ${listed(wrong)}` : `${name} is set as the dive is`;
  const [first, ...others] = differences.map(({ text }) => text);
  const sentences = first
    ? [`${cause}: ${first}.`, ...others.map((text) => `${capital(text)}.`)]
    : [`${cause}, and it shows nothing other than is so.`];
  return { wrong, differences, sentences };
}

function listed(things: readonly string[]): string {
  return things.length < 2 ? things.join('') : `${things.slice(0, -1).join(', ')} and ${things.at(-1)}`;
}

function nothingShown({ timeline, figures }: Watch): Difference[] {
  const owed = stopChanges(timeline, figures).find(({ state }) => state === 'owed');
  const text = owed
    ? `it shows depth and time only, though ${atDayClock(timeline, owed.timeS)} a stop becomes required`
    : 'it shows depth and time and would show nothing else if a stop became due';
  return [{ kind: 'nothing shown', timeS: owed?.timeS ?? 0, shown: 0, so: owed?.stopM ?? 0, text }];
}

/** Within this of a dive's greatest depth one is at the bottom, m. */
const NEAR_BOTTOM_M = 0.1;
/** The finest step a depth is shown in, m. */
const DEPTH_STEP_M = 0.1;

function depthDifference(watch: Watch, right: Watch, system: UnitSystem): Difference[] {
  const at = greatest(right, (i) => right.timeline.depthM[i]!);
  const shown = watch.timeline.depthM[at]!;
  const so = right.timeline.depthM[at]!;
  if (Math.abs(shown - so) < DEPTH_STEP_M) return [];
  const text = `it shows ${sayDepth(shown, system)} where the depth is ${sayDepth(so, system)}`;
  return [{ kind: 'depth', timeS: right.timeline.timeS[at]!, shown, so, text }];
}

/** For each dive, the moment that tells most: at the bottom first, where a no-stop time is looked at. */
function noStopDifferences(watch: Watch, right: Watch, system: UnitSystem): Difference[] {
  return right.dives.flatMap((dive, index): Difference[] => {
    const onDive = (i: number) => right.tracks.divesBegun[i] === index + 1;
    const apart = (i: number) => (onDive(i) ? Math.abs(wholeMinutes(watch, i) - wholeMinutes(right, i)) : 0);
    const atBottom = greatest(right, (i) =>
      right.timeline.depthM[i]! > dive.maxDepthM - NEAR_BOTTOM_M ? apart(i) : 0,
    );
    const at = apart(atBottom) > 0 ? atBottom : greatest(right, apart);
    const shown = wholeMinutes(watch, at);
    const so = wholeMinutes(right, at);
    if (shown === so || apart(at) === 0) return [];
    const depth = sayDepth(right.timeline.depthM[at]!, system);
    const when = index > 0 ? `on dive ${index + 1} ` : '';
    const text = `${when}it shows ${Math.abs(shown - so)} min ${shown > so ? 'more' : 'less'} no-stop time at ${depth} than is so`;
    return [{ kind: 'no-stop time', timeS: right.timeline.timeS[at]!, shown, so, text }];
  });
}

function ceilingDifference(watch: Watch, right: Watch, system: UnitSystem): Difference[] {
  const at = greatest(right, (i) => Math.abs(watch.figures.ceilingM[i]! - right.figures.ceilingM[i]!));
  const shown = watch.figures.ceilingM[at]!;
  const so = right.figures.ceilingM[at]!;
  if (Math.abs(shown - so) < DEPTH_STEP_M) return [];
  const timeS = right.timeline.timeS[at]!;
  const say = (ceilingM: number) =>
    ceilingM > 0 ? `a ceiling at ${printAs('ceilingM', ceilingM, system)}` : 'no ceiling';
  const text = `${atDayClock(right.timeline, timeS)} it shows ${say(shown)} where there is ${so > 0 ? `one at ${printAs('ceilingM', so, system)}` : 'none'}`;
  return [{ kind: 'ceiling', timeS, shown, so, text }];
}

/** Dives on which one of the two asks for a stop and the other never does. */
function stopDifferences(watch: Watch, right: Watch): Difference[] {
  return right.dives.flatMap((dive, index): Difference[] => {
    const asks = watch.dives[index]?.requiredStop ?? false;
    if (asks === dive.requiredStop) return [];
    const text = asks
      ? `on dive ${dive.diveNumber + 1} it asks for a required stop where none is needed`
      : `on dive ${dive.diveNumber + 1} it never asks for the stop that is required`;
    return [{ kind: 'stops', timeS: dive.startS, shown: asks ? 1 : 0, so: dive.requiredStop ? 1 : 0, text }];
  });
}

function lockDifference(watch: Watch, right: Watch): Difference[] {
  const lockedS = ({ toldOnTheWay }: Watch) => toldOnTheWay.find(({ kind }) => kind === 'locked-out')?.timeS;
  const shown = lockedS(watch);
  const so = lockedS(right);
  if ((shown === undefined) === (so === undefined)) return [];
  const timeS = shown ?? so ?? 0;
  const at = atDayClock(right.timeline, timeS);
  const text =
    shown === undefined
      ? `it does not lock, as a unit set right would ${at}`
      : `it locks ${at}, where a unit set right would not`;
  return [{ kind: 'lock', timeS, shown: shown === undefined ? 0 : 1, so: so === undefined ? 0 : 1, text }];
}

function wholeMinutes({ figures }: Watch, sample: number): number {
  return numberAs('noStopMin', Math.min(figures.noStopMin[sample]!, NO_STOP_CAP_MIN), 0);
}

/** The first sample under water at which a figure is greatest. */
function greatest({ timeline }: Watch, figure: (sample: number) => number): number {
  let best = 0;
  let most = 0;
  for (let i = 0; i < timeline.length; i += 1) {
    if (timeline.depthM[i]! <= 0) continue;
    const here = figure(i);
    if (here > most) {
      most = here;
      best = i;
    }
  }
  return best;
}
