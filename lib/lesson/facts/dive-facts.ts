import { sampleAt, sampleFromS } from '../../dive/timeline';
import type { Leg } from '../../dive/legs';
import { heldBreaths } from '../../rules/body/lungs';
import { lostWashout } from '../../rules/body/lost-washout';
import { EDGE_M } from '../../rules/safety-stop';
import type { DiveSpan } from './dive-spans';
import type { View } from '../questions/subject';
import { NoValue, type DiveFact } from './fact';
import { MINUTE_S } from '../../quantity/duration';

/** Above the ceiling by less than this is no matter: the finest step a depth is shown in, m. */
const SLACK_M = 0.1;
/** A dive steered by hand has a step for every move; more of them are not looked at for stops. */
const MOST_CHANGES = 60;
const SAFETY_BAND_M = [3, 6] as const;

/** The legs of a dive as a view has them: a unit may take the depths for others. */
function legsOf({ timeline }: View, span: DiveSpan): Leg[] {
  const last = span.legs.at(-1)!;
  return timeline.legs.filter(({ startS, endS, interval }) => !interval && startS >= span.startS && endS <= last.endS);
}

function surfacedS(span: DiveSpan): number {
  if (span.surfacingS === undefined) throw new NoValue('This dive does not come to the surface.');
  return span.surfacingS;
}

/** Seconds of a leg between two depths. */
function secondsBetween({ startS, endS, fromM, toM }: Leg, shallowM: number, deepM: number): number {
  const lengthS = endS - startS;
  if (fromM === toM) return fromM >= shallowM && fromM <= deepM ? lengthS : 0;
  const overlapM = Math.min(Math.max(fromM, toM), deepM) - Math.max(Math.min(fromM, toM), shallowM);
  return overlapM <= 0 ? 0 : (lengthS * overlapM) / Math.abs(toM - fromM);
}

/** The samples of a dive from leaving the surface to the next dive, or the end of the script. */
function forEachSample(view: View, span: DiveSpan, visit: (sample: number, lengthS: number) => void): void {
  const { timeS } = view.timeline;
  const last = sampleAt(view.timeline, span.nextS);
  for (let i = sampleAt(view.timeline, span.startS); i < last; i += 1) visit(i, timeS[i + 1]! - timeS[i]!);
}

function deepestCeilingM(view: View, span: DiveSpan): number {
  let deepestM = 0;
  forEachSample(view, span, (sample) => {
    deepestM = Math.max(deepestM, view.figures.ceilingM[sample]!);
  });
  return deepestM;
}

/** The stops the model asks for at each change of the dive under water; none where it never had a ceiling. */
function schedulesOf(view: View, span: DiveSpan) {
  if (deepestCeilingM(view, span) === 0) return [];
  const legs = legsOf(view, span);
  const every = Math.max(1, Math.ceil(legs.length / MOST_CHANGES));
  const moments = new Set([...legs.filter((_, i) => i % every === 0).map(({ endS }) => endS), span.leavingS]);
  return [...moments]
    .map((timeS) => sampleAt(view.timeline, timeS))
    .filter((sample) => view.timeline.depthM[sample]! > 0)
    .map((sample) => view.scheduleAt(sample));
}

function eventsOf(view: View, { startS, nextS }: DiveSpan, kind: string) {
  const untilS = nextS >= view.subject.endS ? Infinity : nextS;
  return view.watch().events.filter((one) => one.kind === kind && one.timeS >= startS && one.timeS < untilS);
}

function worstClimb(view: View, span: DiveSpan) {
  return heldBreaths({ ...view.timeline, legs: legsOf(view, span) }).reduce(
    (worst, climb) => (climb.ratio > worst.ratio ? climb : worst),
    { ratio: 1, excessBar: 0 },
  );
}

/** What is so of a whole dive. */
export const DIVE_FACTS: readonly DiveFact[] = [
  {
    of: 'dive',
    name: 'maxDepthM',
    dimension: 'depth',
    meaning: 'Greatest depth.',
    noun: 'the greatest depth',
    value: (view, span) => Math.max(0, ...legsOf(view, span).map(({ fromM, toM }) => Math.max(fromM, toM))),
  },
  {
    of: 'dive',
    name: 'averageDepthM',
    dimension: 'depth',
    meaning: 'Average depth from leaving the surface to the end of the dive.',
    noun: 'the average depth',
    format: 'm 1',
    value(view, span) {
      const legs = legsOf(view, span);
      const seconds = legs.reduce((sum, { startS, endS }) => sum + endS - startS, 0);
      return (
        legs.reduce((sum, { startS, endS, fromM, toM }) => sum + ((endS - startS) * (fromM + toM)) / 2, 0) / seconds
      );
    },
  },
  {
    of: 'dive',
    name: 'bottomMin',
    dimension: 'time',
    meaning: 'Bottom time: from leaving the surface to leaving the bottom.',
    noun: 'the bottom time',
    value: (_, { startS, leavingS }) => (leavingS - startS) / MINUTE_S,
  },
  {
    of: 'dive',
    name: 'runMin',
    dimension: 'time',
    meaning: 'From surface to surface.',
    noun: 'the time under water',
    value: (_, span) => (surfacedS(span) - span.startS) / MINUTE_S,
  },
  {
    of: 'dive',
    name: 'ascentMin',
    dimension: 'time',
    meaning: 'From leaving the bottom to surfacing, stops included.',
    noun: 'the ascent',
    value: (_, span) => (surfacedS(span) - span.leavingS) / MINUTE_S,
  },
  {
    of: 'dive',
    name: 'fastestAscentMMin',
    dimension: 'rate',
    meaning: 'The fastest climb of any step.',
    noun: 'the fastest climb',
    value: (view, span) =>
      Math.max(
        0,
        ...legsOf(view, span).map(({ fromM, toM, startS, endS }) =>
          endS > startS ? ((fromM - toM) / (endS - startS)) * MINUTE_S : 0,
        ),
      ),
  },
  {
    of: 'dive',
    name: 'requiredStopMin',
    dimension: 'time',
    meaning: 'The most minutes of required stops asked for at any change of the dive; 0 where there are none.',
    noun: 'the time at required stops',
    format: 'min 1',
    measure: 'stopMin',
    value: (view, span) =>
      Math.max(0, ...schedulesOf(view, span).map(({ stops }) => stops.reduce((sum, { minutes }) => sum + minutes, 0))),
  },
  {
    of: 'dive',
    name: 'deepestStopM',
    dimension: 'depth',
    meaning: 'The deepest required stop the model asked for at any change of the dive; 0 where it asked for none.',
    noun: 'the deepest required stop',
    format: 'stop',
    measure: 'stopM',
    value: (view, span) => Math.max(0, ...schedulesOf(view, span).map(({ stops }) => stops[0]?.depthM ?? 0)),
  },
  {
    of: 'dive',
    name: 'deepestCeilingM',
    dimension: 'depth',
    meaning: 'The deepest the ceiling came, until the next dive or the end of the script.',
    noun: 'the deepest ceiling',
    format: 'm 1',
    measure: 'ceilingM',
    value: deepestCeilingM,
  },
  {
    of: 'dive',
    name: 'aboveCeilingMin',
    dimension: 'time',
    meaning: 'Time above the ceiling, at the surface too, until the next dive or the end of the script.',
    noun: 'the time above the ceiling',
    value(view, span) {
      let seconds = 0;
      forEachSample(view, span, (sample, lengthS) => {
        if (view.timeline.depthM[sample]! < view.figures.ceilingM[sample]! - SLACK_M) seconds += lengthS;
      });
      return seconds / MINUTE_S;
    },
  },
  {
    of: 'dive',
    name: 'mostAboveCeilingM',
    dimension: 'depth',
    meaning: 'How far above the ceiling the diver was at most; 0 if never.',
    noun: 'the most you were above the ceiling',
    format: 'm 1',
    value(view, span) {
      let mostM = 0;
      forEachSample(view, span, (sample) => {
        mostM = Math.max(mostM, view.figures.ceilingM[sample]! - view.timeline.depthM[sample]!);
      });
      return mostM;
    },
  },
  {
    of: 'dive',
    name: 'safetyStopMin',
    dimension: 'time',
    meaning: 'Time between 3 m and 6 m after leaving the bottom.',
    noun: 'the time between 3 m and 6 m on the way up',
    format: 'min 1',
    value: (view, span) =>
      legsOf(view, span)
        .filter(({ startS }) => startS >= span.leavingS)
        .reduce((sum, leg) => sum + secondsBetween(leg, SAFETY_BAND_M[0] - EDGE_M, SAFETY_BAND_M[1] + EDGE_M), 0) /
      MINUTE_S,
  },
  {
    of: 'dive',
    name: 'minutesBetween',
    dimension: 'time',
    parameters: ['depth', 'depth'],
    meaning: 'Time between two depths.',
    noun: 'the time between {1} and {2}',
    value: (view, span, [oneM, otherM]) =>
      legsOf(view, span).reduce(
        (sum, leg) => sum + secondsBetween(leg, Math.min(oneM!, otherM!), Math.max(oneM!, otherM!)),
        0,
      ) / MINUTE_S,
  },
  {
    of: 'dive',
    name: 'surfaceIntervalMin',
    dimension: 'time',
    meaning: 'Time at the surface before this dive.',
    noun: 'the surface interval',
    format: 'hours',
    value(view, span) {
      const before = view.subject.spans[span.number - 2];
      if (!before) throw new NoValue('There is no dive before this one.');
      return (span.startS - surfacedS(before)) / MINUTE_S;
    },
  },
  {
    of: 'dive',
    name: 'diveCount',
    dimension: 'plain',
    meaning: 'How many dives the script has.',
    noun: 'the number of dives',
    value: (view) => view.subject.spans.length,
  },
  {
    of: 'dive',
    name: 'count',
    dimension: 'plain',
    parameters: ['event'],
    meaning: 'How often an event came about from this dive on until the next.',
    noun: 'how often “{1}” happens',
    value: (view, span, _, event) => eventsOf(view, span, event).length,
  },
  {
    of: 'dive',
    name: 'firstMin',
    dimension: 'time',
    parameters: ['event'],
    meaning: 'Run time at which an event first came about on this dive; infinite if it never did.',
    noun: 'when “{1}” first happens',
    format: 'clock',
    value: (view, span, _, event) =>
      sampleFromS(view.timeline, eventsOf(view, span, event)[0]?.timeS ?? Infinity) / MINUTE_S,
  },
  {
    of: 'dive',
    name: 'heldBreathRatio',
    dimension: 'plain',
    meaning: 'How many times its volume a breath held through the worst climb would take.',
    noun: 'how many times a held breath would grow',
    format: 'number 1',
    value: (view, span) => worstClimb(view, span).ratio,
  },
  {
    of: 'dive',
    name: 'heldBreathExcessBar',
    dimension: 'pressure',
    meaning: 'How far above the water’s pressure a breath held through that climb would be, could it not stretch.',
    noun: 'the excess pressure of a held breath',
    value: (view, span) => worstClimb(view, span).excessBar,
  },
  {
    of: 'dive',
    name: 'lostWashoutPercent',
    dimension: 'percent',
    meaning: 'How much more surfacing supersaturation there is than with every climb at 9 m/min.',
    noun: 'the surfacing supersaturation the fast climbs cost',
    format: '% 1',
    value(view, span) {
      surfacedS(span);
      const { diveNumber } = span.legs[0]!;
      return (lostWashout(view.dive).find((one) => one.diveNumber === diveNumber)?.lost ?? 0) * 100;
    },
  },
];
