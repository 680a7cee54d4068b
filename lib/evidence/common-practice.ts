import published from '../../content/published/common-practice.json';
import { commonPracticeSchema } from '../../content/published/schema';
import { sampleAt } from '../dive/timeline';
import { AIR } from '../physics/gas';
import { printFactors } from '../quantity/percent';
import { compared, ranged, type Check } from './check';
import type { Engine } from './engine';
import { seaLevelDive, stepsThrough } from './sea-level-dive';

const group = 'common-practice';
/** The stay that follows a descent, long enough for a sample to belong to it. */
const AFTERWARDS = { durationS: 60 };

/** What instructors see their instruments show, with no source but the trade. */
export function commonPracticeChecks(engine: Engine): Check[] {
  const { source, tolerances, limits, noStopAfterDescent, shortDeepDive } = commonPracticeSchema.parse(published);
  return limits.flatMap((gradientFactors) => {
    const name = printFactors(gradientFactors);
    const deepestM = noStopAfterDescent.legs.at(-1)!.toM;
    const arrivalS = noStopAfterDescent.legs.reduce((sum, leg) => sum + leg.durationS, 0);
    const descent = stepsThrough([...noStopAfterDescent.legs, { toM: deepestM, ...AFTERWARDS }]);
    const downDive = seaLevelDive(AIR, descent, gradientFactors);
    const shortDive = seaLevelDive(AIR, stepsThrough(shortDeepDive.legs), gradientFactors);
    const down = engine.computeTimeline(downDive, 1);
    const short = engine.computeTimeline(shortDive, 1);
    return [
      ranged({
        id: `${group}-no-stop-${name}`,
        group,
        title: `${noStopAfterDescent.text} (limits ${name})`,
        from: noStopAfterDescent.fromMin,
        to: noStopAfterDescent.toMin,
        ours: engine.figuresOf(down, downDive.settings).noStopMin[sampleAt(down, arrivalS)]!,
        unit: 'min',
        tolerance: tolerances.noStop.value,
        reason: tolerances.noStop.reason,
        source,
        obtained: noStopAfterDescent.obtained,
      }),
      compared({
        id: `${group}-short-deep-${name}`,
        group,
        title: `${shortDeepDive.text} (deepest ceiling, limits ${name})`,
        published: 0,
        ours: Math.max(...engine.figuresOf(short, shortDive.settings).ceilingM),
        unit: 'm',
        tolerance: tolerances.shortDeepDive.value,
        reason: tolerances.shortDeepDive.reason,
        source,
        obtained: shortDeepDive.obtained,
      }),
    ];
  });
}
