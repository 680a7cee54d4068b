import { ScriptPage } from '../../dive/script/page';
import { printHours } from '../../quantity/duration';
import { minutesOf } from '../day';
import { finished, setWait } from '../changes';
import type { Lever, Try } from '../lever';
import { worked } from '../trouble';
import { gasAt } from '../../dive/timeline';
import type { Leg } from '../../dive/legs';
import { nitrogenFraction } from '../../physics/gas';
import { COMPARTMENTS } from '../../tissue/coefficients';
import type { Day } from '../day';
import { stepsIn } from '../../quantity/rounding';

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
      for (let minutes = stepsIn(fromMin) + 1; minutes <= LONGEST_MIN; minutes += 1) {
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
      ordered: onlyEmpties(day, intervalBefore),
      even: `Even after ${printHours(Math.max(LONGEST_MIN, fromMin) * 60)} at the surface`,
    };
  },
};

/**
 * Whether more time at the surface can only help. Where every compartment begins the interval above what the lungs offer
 * there, each goes on falling, so that the next dive begins with less in all of them the longer the interval was; and
 * what a compartment holds later only rises with what it began with. With nitrogen alone and one gradient factor at every
 * depth, less gas breaks no limit that more gas kept. Helium moves the limits themselves, and a low factor below the high
 * one hangs on how deep the ceiling was: there every interval is tried.
 */
function onlyEmpties({ dive }: Day, { startS }: Leg): boolean {
  const { gradientFactors, carried } = dive.settings;
  const { timeline } = worked(dive);
  if (timeline.hasHelium || carried.length > 0 || gradientFactors.low !== gradientFactors.high) return false;
  const sample = timeline.timeS.findLastIndex((timeS) => timeS <= startS);
  const offeredBar = (timeline.surfaceBar - timeline.lungOffsetBar) * nitrogenFraction(gasAt(timeline, sample));
  for (let c = 0; c < COMPARTMENTS; c += 1)
    if (timeline.nitrogenBar[sample * COMPARTMENTS + c]! < offeredBar) return false;
  return true;
}
