import { legRateMMin } from '../../dive/script/leg-rate';
import { ScriptPage } from '../../dive/script/page';
import { sayDepth } from '../../quantity/depth';
import { METRES_PER_FOOT } from '../../quantity/length';
import { wayUpOf } from '../day';
import { breakClimb, finished, setWait } from '../changes';
import type { Lever, Try } from '../lever';
import { sayMinutes } from '../words';
import { DUST, stepsTo } from '../../quantity/rounding';

const LONGEST_MIN = 20;

/** A wait on the way up, at a depth of stops, before the trouble comes about. */
export const pause: Lever = {
  id: 'pause',
  title: 'Pause on the way up',
  avoids: ['stop', 'ceiling'],
  keepsRates: true,
  range({ day, dive }) {
    const climbs = wayUpOf(dive);
    const { system } = day;
    const everyM = system === 'metric' ? 3 : 10 * METRES_PER_FOOT;
    const places = climbs.flatMap((climb) => {
      const within: { climb: typeof climb; depthM: number }[] = [];
      for (let n = stepsTo(climb.fromM, everyM) - 1; n > 0 && n * everyM >= climb.toM - DUST; n -= 1)
        within.push({ climb, depthM: n * everyM });
      return within;
    });
    if (places.length === 0) return { none: 'The way up passes no depth at which to pause.' };
    function* tries(): Generator<Try> {
      for (let minutes = 1; minutes <= LONGEST_MIN; minutes += 1) {
        for (const { climb, depthM } of places) {
          yield {
            to: minutes,
            doing: `Pausing for ${sayMinutes(minutes)} at ${sayDepth(depthM, system)} on the way up`,
            cost: `the way up ${sayMinutes(minutes)} longer`,
            script() {
              const page = new ScriptPage(day.script);
              const wait = dive.legs.find(({ startS, fromM, toM }) => startS === climb.endS && fromM === toM);
              if (wait && Math.abs(wait.toM - depthM) < 0.05)
                setWait(page, wait.step, wait.endS - wait.startS + minutes * 60);
              else if (Math.abs(climb.toM - depthM) < 0.05)
                page.insert(page.lineOfStep(climb.step) + 1, `stay ${minutes} min`, page.lineOfStep(climb.step));
              else {
                const rateMMin = legRateMMin(climb.fromM, climb.toM, climb.endS - climb.startS);
                breakClimb(page, climb.step, { depthM, waitS: minutes * 60, rateMMin }, system);
              }
              return finished(page);
            },
          };
        }
      }
    }
    return {
      from: 0,
      unit: 'min',
      tries: tries(),
      even: `Even pausing for ${LONGEST_MIN} min at any depth of the way up`,
      changesFrom: { timeS: climbs[0]!.startS, called: 'before the way up begins' },
    };
  },
};
