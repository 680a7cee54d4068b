import { ScriptPage } from '../../dive/script/page';
import { sayDepth } from '../../quantity/depth';
import { levelsOf, minutesOf } from '../day';
import { finished, setWait } from '../changes';
import type { Lever, Try } from '../lever';
import { sayMinutes } from '../words';
import { stepsTo } from '../../quantity/rounding';

/** Less time at the deepest level, and as much more at the next: the dive is as long as it was. */
export const shorterDeepest: Lever = {
  id: 'shorter-deepest',
  title: 'Give time at the deepest level to the next',
  avoids: ['stop', 'ceiling'],
  range({ day, dive }) {
    const levels = levelsOf(dive);
    const deepest = levels.findLast(({ toM }) => toM > dive.maxDepthM - 0.05);
    const next = deepest && levels.find(({ startS, toM }) => startS >= deepest.endS && toM < deepest.toM);
    if (!deepest || !next) return { none: 'This dive has no second level that the time could be given to.' };
    const fromMin = minutesOf(deepest);
    const where = sayDepth(next.toM, day.system);
    function* tries(): Generator<Try> {
      for (let minutes = stepsTo(fromMin) - 1; minutes >= 0; minutes -= 1) {
        const gone = fromMin - minutes;
        yield {
          to: minutes,
          doing: `Leaving ${sayDepth(deepest!.toM, day.system)} ${sayMinutes(gone)} earlier for ${where}, and staying there as much longer`,
          cost: `${sayMinutes(gone)} less at the deepest level, none of the dive`,
          script() {
            const page = new ScriptPage(day.script);
            setWait(page, next!.step, next!.endS - next!.startS + gone * 60);
            setWait(page, deepest!.step, minutes * 60);
            return finished(page);
          },
        };
      }
    }
    return {
      from: Math.round(fromMin * 100) / 100,
      unit: 'min',
      tries: tries(),
      even: `Even with all the time spent at ${where}`,
    };
  },
};
