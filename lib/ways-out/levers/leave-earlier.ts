import { ScriptPage } from '../../dive/script/page';
import type { Leg } from '../../dive/legs';
import { bottomOf, minutesOf, type Day, type DiveSteps } from '../day';
import { cutLeg, finished, setWait } from '../changes';
import type { Lever, Try } from '../lever';
import { sayMinutes } from '../words';
import { stepsTo } from '../../quantity/rounding';

/** The bottom is left sooner: its last minutes go, and with them what was done only then. */
export const leaveEarlier: Lever = {
  id: 'leave-earlier',
  title: 'Leave the bottom earlier',
  avoids: ['stop', 'ceiling'],
  range({ day, dive }) {
    const bottom = bottomOf(dive);
    const waits = bottom.filter(({ fromM, toM }) => fromM === toM);
    const arrival = bottom.find(({ toM, fromM }) => toM <= fromM) ?? dive.lastOfBottom;
    const from = Math.max(0, (dive.lastOfBottom.endS - arrival.startS) / 60);
    const even = 'Even leaving the bottom as soon as it was reached';
    if (
      bottom.some(
        ({ fromM, toM, startS, endS }) => startS >= arrival.startS && fromM !== toM && endS - startS > SLOPE_S,
      )
    )
      return { from: round(from), unit: 'min', tries: cuts(day, dive, arrival), even };
    if (waits.length === 0)
      return { none: 'This dive waits nowhere at the bottom: there is no time there to leave out.' };
    const firstWait = bottom.indexOf(waits[0]!);

    function* tries(): Generator<Try> {
      for (let i = bottom.length - 1; i >= firstWait; i -= 1) {
        const leg = bottom[i]!;
        if (leg.fromM !== leg.toM) continue;
        const durationMin = minutesOf(leg);
        for (let minutes = stepsTo(durationMin) - 1; minutes >= 0; minutes -= 1) {
          const goneS = dive.lastOfBottom.endS - leg.startS - minutes * 60;
          const to = Math.max(0, (leg.startS - arrival.startS) / 60 + minutes);
          yield {
            to: round(to),
            doing: `Leaving the bottom ${sayMinutes(goneS / 60)} earlier`,
            cost: `${sayMinutes(goneS / 60)} less at the bottom`,
            script() {
              const page = new ScriptPage(day.script);
              // From the end, so that what comes before stays where it is counted.
              for (const later of bottom.slice(i + 1).reverse()) {
                const line = page.lineOfStep(later.step);
                if (later.toM >= later.fromM) page.remove(line);
              }
              setWait(page, leg.step, minutes * 60);
              return finished(page);
            },
          };
        }
      }
    }
    return {
      from: round(from),
      unit: 'min',
      tries: tries(),
      even,
    };
  },
};

/** A change of depth that lasts longer is a time at the bottom like any other, as in a dive that was recorded. */
const SLOPE_S = 120;

/** The dive cut off at whole minutes before it left the bottom, and the way up begun from there. */
function* cuts(day: Day, dive: DiveSteps, arrival: Leg): Generator<Try> {
  const bottom = bottomOf(dive);
  for (let minutes = 1; ; minutes += 1) {
    const atS = dive.lastOfBottom.endS - minutes * 60;
    if (atS <= arrival.startS) return;
    const cut = bottom.findLast(({ startS }) => startS < atS)!;
    yield {
      to: round((atS - arrival.startS) / 60),
      doing: `Leaving the bottom ${sayMinutes(minutes)} earlier`,
      cost: `${sayMinutes(minutes)} less at the bottom`,
      script() {
        const page = new ScriptPage(day.script);
        for (const { step, startS } of [...bottom].reverse())
          if (startS > cut.startS) page.remove(page.lineOfStep(step));
        cutLeg(page, cut, atS - cut.startS, day.system);
        return finished(page);
      },
    };
  }
}

function round(minutes: number): number {
  return Math.round(minutes * 100) / 100;
}
