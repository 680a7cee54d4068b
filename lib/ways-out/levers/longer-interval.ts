import { ScriptPage } from '../../dive/script/page';
import { printHours } from '../../quantity/duration';
import { minutesOf } from '../day';
import { finished, setWait } from '../changes';
import type { Lever, Try } from '../lever';

const LONGEST_MIN = 24 * 60;

/** More time at the surface before the dive, for what is left of the one before. */
export const longerInterval: Lever = {
  id: 'longer-interval',
  title: 'Wait longer at the surface before it',
  avoids: ['stop', 'ceiling'],
  keepsRates: true,
  range({ day, dive: { intervalBefore } }) {
    if (!intervalBefore) return { none: 'No dive came before it: there is no interval to lengthen.' };
    const fromMin = minutesOf(intervalBefore);
    function* tries(): Generator<Try> {
      for (let minutes = Math.floor(fromMin + 1e-6) + 1; minutes <= LONGEST_MIN; minutes += 1) {
        yield {
          to: minutes,
          doing: `Waiting ${printHours(minutes * 60)} at the surface before it`,
          cost: `${printHours((minutes - fromMin) * 60)} more at the surface`,
          script() {
            const page = new ScriptPage(day.script);
            setWait(page, intervalBefore!.step, minutes * 60);
            return finished(page);
          },
        };
      }
    }
    return {
      from: Math.round(fromMin * 100) / 100,
      unit: 'min',
      tries: tries(),
      even: `Even after ${printHours(Math.max(LONGEST_MIN, fromMin) * 60)} at the surface`,
    };
  },
};
