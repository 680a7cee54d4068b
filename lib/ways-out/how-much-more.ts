import { legRateMMin } from '../dive/script/leg-rate';
import { ScriptPage } from '../dive/script/page';
import { printHours } from '../quantity/duration';
import { sayDepth } from '../quantity/depth';
import { METRES_PER_FOOT } from '../quantity/length';
import { printRate } from '../quantity/rate';
import { dayOf, levelsOf, minutesOf, wayUpOf, type Day, type DiveSteps } from './day';
import { finished, setDepth, setRate, setWait } from './changes';
import { depthFigure, depthGridM, depthUnit, rateFigure } from './lever';
import { AVOIDED, sayMinutes } from './words';
import { troubleOf, type NoWayOut, type Question, type WayOut } from './ways-out';
import { stepsIn, stepsTo } from '../quantity/rounding';

/** A change that goes the other way: how far it could have gone before it came to that. */
interface Stretch {
  readonly id: string;
  readonly title: string;
  tries(day: Day, dive: DiveSteps): Iterable<{ from: number; to: number; doing: string; script: string | undefined }>;
  readonly unit: (day: Day) => string;
  readonly even: string;
}

const MOST_MIN = 120;
const MOST_DEEPER_M = 20;

const STRETCHES: readonly Stretch[] = [
  {
    id: 'stay-longer',
    title: 'Stay longer at the bottom',
    unit: () => 'min',
    even: `Even ${MOST_MIN} min more at the bottom`,
    *tries(day, dive) {
      const wait = levelsOf(dive).at(-1);
      if (!wait) return;
      for (let more = 1; more <= MOST_MIN; more += 1) {
        const page = new ScriptPage(day.script);
        setWait(page, wait.step, wait.endS - wait.startS + more * 60);
        const from = Math.round(minutesOf(wait) * 100) / 100;
        yield { from, to: from + more, doing: `${sayMinutes(more)} more at the bottom`, script: finished(page) };
      }
    },
  },
  {
    id: 'go-deeper',
    title: 'Go deeper at the deepest level',
    unit: ({ system }) => depthUnit(system),
    even: `Even ${MOST_DEEPER_M} m deeper`,
    *tries(day, dive) {
      const { system } = day;
      const grid = depthGridM(system);
      const first = stepsIn(dive.maxDepthM, grid) + 1;
      for (let steps = first; steps * grid <= dive.maxDepthM + MOST_DEEPER_M; steps += 1) {
        const toM = steps * grid;
        const page = new ScriptPage(day.script);
        for (const leg of dive.legs)
          if (leg.toM !== leg.fromM && leg.toM > dive.maxDepthM - 0.05) setDepth(page, leg.step, toM, system);
        yield {
          from: depthFigure(dive.maxDepthM, system),
          to: depthFigure(toM, system),
          doing: `${sayDepth(toM, system)} at the deepest and not ${sayDepth(dive.maxDepthM, system)}`,
          script: finished(page),
        };
      }
    },
  },
  {
    id: 'come-up-faster',
    title: 'Come up faster',
    unit: ({ system }) => `${depthUnit(system)}/min`,
    even: 'Even at 60 m/min on the way up',
    *tries(day, dive) {
      const { system } = day;
      const step = system === 'metric' ? 1 : 5 * METRES_PER_FOOT;
      const climbs = wayUpOf(dive);
      const from = Math.max(0, ...climbs.map(({ fromM, toM, startS, endS }) => legRateMMin(fromM, toM, endS - startS)));
      for (let n = stepsIn(from, step) + 1; n * step <= 60; n += 1) {
        const page = new ScriptPage(day.script);
        for (const climb of climbs) setRate(page, climb.step, n * step, system);
        yield {
          from: rateFigure(from, system),
          to: rateFigure(n * step, system),
          doing: `${printRate(n * step, system)} on the way up`,
          script: finished(page),
        };
      }
    },
  },
  {
    id: 'shorter-interval',
    title: 'Wait less at the surface before it',
    unit: () => 'min',
    even: 'Even a minute at the surface before it',
    *tries(day, { intervalBefore }) {
      if (!intervalBefore) return;
      const from = minutesOf(intervalBefore);
      for (let minutes = stepsTo(from) - 1; minutes >= 1; minutes -= 1) {
        const page = new ScriptPage(day.script);
        setWait(page, intervalBefore.step, minutes * 60);
        yield {
          from: Math.round(from * 100) / 100,
          to: minutes,
          doing: `${printHours(minutes * 60)} at the surface before it`,
          script: finished(page),
        };
      }
    },
  },
];

/**
 * The reverse question, of a dive without the trouble: how much more it would have taken. Each stretch by itself, the
 * first sensible step that brings it about, worked out anew; asked of the deepest dive of the day. Empty where it is there already.
 */
export function howMuchMore(script: string, question: Question): (WayOut | NoWayOut)[] {
  const day = dayOf(script, question.system);
  if (!day || troubleOf(script, question)) return [];
  const dive = [...day.dives].sort((one, other) => other.maxDepthM - one.maxDepthM)[0];
  if (!dive) return [];
  const trouble = AVOIDED[question.target];
  return STRETCHES.flatMap(({ id, title, tries, unit, even }): (WayOut | NoWayOut)[] => {
    const common = { lever: id, title, dive: dive.number + 1 };
    let any = false;
    for (const { from, to, doing, script: changed } of tries(day, dive)) {
      any = true;
      if (changed === undefined || !troubleOf(changed, question)) continue;
      const text = `It would have taken ${doing} to come to ${trouble}.`;
      return [{ ...common, from, to, unit: unit(day), cost: '', text, script: changed }];
    }
    return any ? [{ ...common, none: true, text: `${even} would not have come to ${trouble}.` }] : [];
  });
}
