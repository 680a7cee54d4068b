import { setSetting } from '../../dive/edit/edit-settings';
import { writeGas } from '../../dive/gas-text';
import { siteOf } from '../../dive/timeline';
import { sameGas } from '../../physics/gas';
import { maximumOperatingDepthM } from '../../physics/oxygen-depth';
import { PO2_SLACK_BAR, WORKING_PO2_BAR } from '../../physics/oxygen-limits';
import { sayDepth } from '../../quantity/depth';
import { legsOf } from '../../dive/legs';
import type { Day } from '../day';
import { depthGridM, type Lever, type Try } from '../lever';
import { DUST, stepsIn } from '../../quantity/rounding';

/** More oxygen, and so less nitrogen, in the gas each dive begins with. */
export const richerGas: Lever = {
  id: 'richer-gas',
  title: 'Breathe a richer gas',
  avoids: ['stop', 'ceiling'],
  wholeDay: true,
  keepsRates: true,
  range({ day }) {
    const { gas } = day.dive.settings;
    const most = Math.round((1 - gas.he) * 100);
    const deepestM = deepestOnFirstGas(day);
    function* tries(): Generator<Try> {
      for (let percent = stepsIn(gas.o2 * 100) + 1; percent <= most; percent += 1) {
        const richer = { o2: percent / 100, he: gas.he };
        const limitM = limitOf(day, richer.o2);
        yield {
          to: percent,
          doing: `Breathing ${writeGas(richer)} and not ${writeGas(gas)}`,
          cost: `${percent - Math.round(gas.o2 * 100)}% more oxygen`,
          script: () => setSetting(day.script, 'gas', writeGas(richer)),
          ...(limitM < deepestM - DUST && {
            but: `${writeGas(richer)} would have done, but its oxygen limit is ${sayDepth(floored(limitM, day), day.system)} and the dive goes to ${sayDepth(deepestM, day.system)}.`,
          }),
        };
      }
    }
    return {
      from: Math.round(gas.o2 * 1000) / 10,
      unit: '%',
      tries: tries(),
      even: `Even with ${most}% of oxygen`,
    };
  },
};

function limitOf(day: Day, o2: number): number {
  const { surfaceBar, barPerMetre } = siteOf(day.dive);
  return maximumOperatingDepthM(o2, WORKING_PO2_BAR + PO2_SLACK_BAR, surfaceBar, barPerMetre);
}

function floored(depthM: number, { system }: Day): number {
  const whole = system === 'metric' ? 1 : depthGridM(system);
  return Math.max(0, stepsIn(depthM, whole) * whole);
}

function deepestOnFirstGas({ dive }: Day): number {
  const { legs, gases } = legsOf(dive);
  return legs.reduce(
    (deepest, { gas, fromM, toM }) =>
      sameGas(gases[gas]!, dive.settings.gas) ? Math.max(deepest, fromM, toM) : deepest,
    0,
  );
}
